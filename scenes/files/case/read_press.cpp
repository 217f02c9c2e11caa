#include "scenes/files/case/read_press.h"

#include "scenes/files/case/open_asset.h"
#include "scenes/files/case/strict_table.h"

namespace overbend::files {

namespace {

constexpr Range block_size = above_to(0.0, 2000.0);  // mm, of what stands about the tools
constexpr Range length = above_to(0.0, 5000.0);      // mm
constexpr Range speed = above_to(0.0, 1e4);          // mm/s

std::optional<PressBlock> read_press_block(const StrictTable& press, const char* key) {
    if (!press.has(key)) return std::nullopt;
    const StrictTable block = press.table(key, {"width_mm", "height_mm"});
    return PressBlock{block.number("width_mm", block_size), block.number("height_mm", block_size)};
}

std::optional<Gauge> read_gauge(const StrictTable& press) {
    if (!press.has("gauge")) return std::nullopt;
    const StrictTable table =
        press.table("gauge", {"height_mm", "length_mm", "draws_back_mm", "reach_mm", "nearest_mm"});
    Gauge gauge{table.number("height_mm", block_size), table.number("length_mm", block_size),
                table.number_or("draws_back_mm", Gauge{}.draws_back, from_to(0.0, 2000.0))};
    gauge.reach = table.optional_number("reach_mm", length);
    gauge.nearest = table.optional_number("nearest_mm", from_to(0.0, gauge.reach.value_or(5000.0)));
    return gauge;
}

std::optional<shop::RamSpeeds> read_speeds(const StrictTable& press) {
    if (!press.has("speed")) return std::nullopt;
    const StrictTable table = press.table(
        "speed", {"approach_mm_per_s", "pressing_mm_per_s", "return_mm_per_s", "slow_above_mm", "dwell_s"});
    shop::RamSpeeds speeds;
    speeds.approach = table.number("approach_mm_per_s", speed);
    speeds.pressing = table.number("pressing_mm_per_s", speed);
    speeds.going_back = table.number("return_mm_per_s", speed);
    speeds.slow_above = table.number_or("slow_above_mm", speeds.slow_above, from_to(0.0, 1000.0));
    speeds.dwell = table.number_or("dwell_s", speeds.dwell, from_to(0.0, 60.0));
    return speeds;
}

void read_what_it_bears(const StrictTable& table, Press& press) {
    press.daylight = table.optional_number("daylight_mm", from_to(press.stroke, 10000.0));
    press.throat = table.optional_number("throat_mm", length);
    press.line_load = table.optional_number("line_load_kN_per_m", above_to(0.0, 1e5));
    press.off_centre = table.optional_number("off_centre_kN_m", above_to(0.0, 1e5));
    press.energy = table.optional_number("energy_J", above_to(0.0, 1e7));
}

Press read_table(const StrictTable& table) {
    Press press;
    press.title = table.text_or("title", "");
    press.force = table.number("force_kN", above_to(0.0, 1e5));
    press.stroke = table.number("stroke_mm", above_to(0.0, 5000.0));
    press.punch_holder = read_press_block(table, "punch_holder");
    press.die_holder = read_press_block(table, "die_holder");
    press.ram = read_press_block(table, "ram");
    press.bed = read_press_block(table, "bed");
    press.gauge = read_gauge(table);
    read_what_it_bears(table, press);
    press.speeds = read_speeds(table);
    press.price_per_hour = table.optional_number("price_per_h", from_to(0.0, 1e6));
    press.idle_power = table.optional_number("idle_kW", from_to(0.0, 1e4));
    return press;
}

Press read_card_file(const TomlFile& file) {
    StrictTable table(file);
    Words keys = press_keys();
    keys.push_back("source");
    table.expect(keys);
    table.text("title");
    table.text("source");
    return read_table(table);
}

}  // namespace

const std::vector<std::string>& press_keys() {
    static const Words keys = {
        "title",    "force_kN", "stroke_mm",   "punch_holder", "die_holder",         "ram",
        "bed",      "gauge",    "daylight_mm", "throat_mm",    "line_load_kN_per_m", "off_centre_kN_m",
        "energy_J", "speed",    "price_per_h", "idle_kW"};
    return keys;
}

Press read_press_card(const std::string& name_or_path, const std::filesystem::path& beside) {
    return read_card_file(read_toml(file_of(name_or_path, beside, presses)));
}

void read_press(const StrictTable& top, const std::filesystem::path& beside, Case& job) {
    if (!top.has("press")) return;
    if (!top.is_text("press")) {
        job.press = read_table(top.table("press", press_keys()));
        return;
    }
    const TomlFile file = open_asset(top, "press", beside, presses);
    const std::string name = top.text("press");
    job.press = read_card_file(file);
    job.press_name = is_path(name) ? path_from_anywhere(file.file) : name;
}

}  // namespace overbend::files
