#include "scenes/files/case/read_shop.h"

#include "scenes/files/case/describe.h"
#include "scenes/files/case/table_reader.h"

namespace overbend::files {

// ---- presses

namespace {

Press read_card_file(const TomlFile& file) {
    return read_as<PressCard>(StrictTable(file)).press;
}

}  // namespace

Press read_press_card(const std::string& name_or_path, const std::filesystem::path& beside) {
    return read_card_file(read_toml(file_of(name_or_path, beside, presses)));
}

void read_press(const StrictTable& top, const std::filesystem::path& beside, Case& job) {
    if (!top.has("press")) return;
    if (!top.is_text("press")) {
        job.press = read_as<Press>(top.table("press", {}));
        return;
    }
    const TomlFile file = open_asset(top, "press", beside, presses);
    const std::string name = top.text("press");
    job.press = read_card_file(file);
    job.press_name = is_path(name) ? path_from_anywhere(file.file) : name;
}

// ---- tool steels

namespace {

shop::ToolSteel read_steel(const TomlFile& file, const std::string& name) {
    const StrictTable table(file);
    SteelTable given = read_as<SteelTable>(table);
    if (given.rockwell && given.vickers)
        table.complain("hardness_HV", "the hardness is given twice", "remove one of them");
    if (!given.rockwell && !given.vickers)
        table.complain_missing("hardness_HV",
                               "give hardness_HV or hardness_HRC: the hardness at which the figures hold");
    given.steel.hardness = given.vickers ? *given.vickers : shop::vickers_of_rockwell(*given.rockwell);
    given.steel.name = name;
    return given.steel;
}

}  // namespace

shop::ToolSteel read_tool_steel(const std::string& name_or_path, const std::filesystem::path& beside) {
    return read_steel(read_toml(file_of(name_or_path, beside, tool_steels)), name_or_path);
}

NamedSteel read_named_steel(const StrictTable& table, std::string_view key,
                            const std::filesystem::path& beside) {
    const TomlFile file = open_asset(table, key, beside, tool_steels);
    const std::string given = table.text(key);
    const std::string name = is_path(given) ? path_from_anywhere(file.file) : given;
    return {name, read_steel(file, name)};
}

// ---- cost

shop::CostRates usual_rates(const Case& job) {
    shop::CostRates rates;
    if (!job.press) return rates;
    rates.press_per_hour = job.press->price_per_hour.value_or(rates.press_per_hour);
    rates.idle_power = job.press->idle_power.value_or(rates.idle_power);
    return rates;
}

std::optional<shop::CostRates> read_cost(const StrictTable& top, const Case& job) {
    if (!top.has("cost")) return std::nullopt;
    CostTable table{{}, usual_rates(job)};
    read_into(top.table("cost", {}), table);
    return table.rates;
}

}  // namespace overbend::files
