#include "scenes/case/read_block.h"

#include "scenes/case/strict_table.h"
#include "sim/errors.h"

namespace overbend::scenes {

namespace {

constexpr Range size = above_to(0.0, 2000.0);         // mm
constexpr Range size_or_none = from_to(0.0, 2000.0);  // mm

tool::Block read_block(const StrictTable& table, double usual_height) {
    tool::Block block;
    block.width = table.number("width_mm", size);
    block.left_radius = block.right_radius = table.number_or("corner_radius_mm", 0.0, size_or_none);
    block.height = table.number_or("height_mm", usual_height, size);
    return block;
}

// Wound springs share the strip's width.
tool::Spring read_wound(const StrictTable& table, double strip_width) {
    tool::HelicalSpring wound;
    wound.wire = table.number("wire_mm", above_to(0.0, 100.0));
    wound.coil_diameter = table.number("coil_mm", above_to(0.0, 500.0));
    wound.turns = table.number("turns", above_to(0.0, 200.0));
    wound.shear_modulus = table.number("shear_modulus_MPa", from_to(1000.0, 1e6));
    const int count = table.whole_number_or("count", 1, 1, 1000);
    tool::Spring spring;
    spring.preload = table.number_or("preload_N", 0.0, from_to(0.0, 1e8)) / strip_width;
    spring.rate = count * tool::spring_rate(wound) / strip_width;
    return spring;
}

tool::Spring read_spring(const StrictTable& tool_table, double strip_width) {
    StrictTable table =
        tool_table.table("spring", {"preload_N_per_mm", "rate_N_per_mm2", "travel_mm", "wire_mm", "coil_mm",
                                    "turns", "shear_modulus_MPa", "count", "preload_N"});
    bool wound = false;
    for (const char* key : {"wire_mm", "coil_mm", "turns", "shear_modulus_MPa", "count", "preload_N"})
        wound = wound || table.has(key);
    if (wound)
        table.expect({"travel_mm", "wire_mm", "coil_mm", "turns", "shear_modulus_MPa", "count", "preload_N"});
    else
        table.expect({"preload_N_per_mm", "rate_N_per_mm2", "travel_mm"});
    tool::Spring spring;
    try {
        if (wound) spring = read_wound(table, strip_width);
        if (!wound) spring.preload = table.number_or("preload_N_per_mm", 0.0, from_to(0.0, 1e5));
        if (!wound) spring.rate = table.number_or("rate_N_per_mm2", 0.0, from_to(0.0, 1e5));
        spring.solid = table.number_or("travel_mm", spring.solid, above_to(0.0, 1000.0));
        tool::check(spring);
    } catch (const OutOfRange& error) {
        table.complain("", error.name + ": " + error.wrong, error.right);
    }
    return spring;
}

}  // namespace

Shape read_flat_punch(const StrictTable& table) {
    return FlatPunch{read_block(table, 40.0)};
}

Shape read_flat_die(const StrictTable& table) {
    return FlatDie{read_block(table, 40.0)};
}

Shape read_wiping_punch(const StrictTable& table) {
    WipingPunch punch{read_block(table, 60.0)};
    punch.clearance = table.number("clearance_mm", size);
    return punch;
}

Shape read_wiping_die(const StrictTable& table) {
    tool::Block block;
    block.width = table.number("width_mm", size);
    block.right_radius = table.number("edge_radius_mm", size);
    block.height = table.number_or("height_mm", 60.0, size);
    return WipingDie{block};
}

Shape read_pad(const StrictTable& table, double strip_width) {
    const char* const right =
        "give { preload_N_per_mm, rate_N_per_mm2 } or a wound spring's { wire_mm, coil_mm, "
        "turns, shear_modulus_MPa }";
    if (!table.has("spring")) table.complain_missing("spring", right);
    return Pad{read_block(table, 15.0), read_spring(table, strip_width)};
}

Shape read_clamp(const StrictTable& table, double strip_width) {
    Clamp clamp{read_block(table, 15.0), std::nullopt};
    if (table.has("spring")) clamp.spring = read_spring(table, strip_width);
    return clamp;
}

}  // namespace overbend::scenes
