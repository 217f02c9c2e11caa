#include "scenes/files/case/read_steel.h"

#include <algorithm>

#include "scenes/files/case/open_asset.h"
#include "scenes/files/case/strict_table.h"

namespace overbend::files {

namespace {

constexpr Range strength = from_to(50.0, 1e4);  // MPa
constexpr Range safety = from_to(1.0, 20.0);

// A source for any of the numbers; they must name what a card may have.
void check_sources(const StrictTable& table) {
    if (!table.has("sources")) return;
    Words numbers = steel_keys();
    for (const char* other : {"title", "source", "sources"})
        numbers.erase(std::find(numbers.begin(), numbers.end(), other));
    const StrictTable sources = table.table("sources", numbers);
    for (const std::string& key : sources.present()) sources.text(key);
}

double read_hardness(const StrictTable& table) {
    if (table.has("hardness_HRC") && table.has("hardness_HV"))
        table.complain("hardness_HV", "the hardness is given twice", "remove one of them");
    if (table.has("hardness_HRC"))
        return shop::vickers_of_rockwell(table.number("hardness_HRC", from_to(20.0, 67.0)));
    if (!table.has("hardness_HV"))
        table.complain_missing("hardness_HV",
                               "give hardness_HV or hardness_HRC: the hardness at which the figures hold");
    return table.number("hardness_HV", from_to(80.0, 1000.0));
}

shop::ToolSteel read_steel(const TomlFile& file, const std::string& name) {
    StrictTable table(file);
    table.expect(steel_keys());
    shop::ToolSteel steel;
    steel.name = name;
    steel.title = table.text("title");
    steel.source = table.text("source");
    check_sources(table);
    steel.hardness = read_hardness(table);
    steel.youngs_modulus = table.number("youngs_modulus_MPa", from_to(1e4, 1e6));
    steel.poisson = table.number("poisson", from_below(0.0, 0.5));
    steel.density = table.number("density_kg_m3", from_to(1000.0, 25e3));
    steel.compressive_yield = table.number("compressive_yield_MPa", strength);
    steel.bending_strength = table.number("bending_strength_MPa", strength);
    steel.safety_tension = table.number("safety_tension", safety);
    steel.safety_compression = table.number("safety_compression", safety);
    steel.price = table.number_or("price_per_kg", 0.0, from_to(0.0, 1e6));
    steel.hardening = table.truth_or("hardened", false) ? shop::Hardening::through : shop::Hardening::none;
    return steel;
}

}  // namespace

const std::vector<std::string>& steel_keys() {
    static const Words keys = {"title",
                               "source",
                               "sources",
                               "hardness_HRC",
                               "hardness_HV",
                               "youngs_modulus_MPa",
                               "poisson",
                               "density_kg_m3",
                               "compressive_yield_MPa",
                               "bending_strength_MPa",
                               "safety_tension",
                               "safety_compression",
                               "price_per_kg",
                               "hardened"};
    return keys;
}

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

}  // namespace overbend::files
