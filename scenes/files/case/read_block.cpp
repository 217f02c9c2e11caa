#include "scenes/files/case/read_block.h"

#include "scenes/files/case/strict_table.h"
#include "scenes/files/case/usual_sizes.h"
#include "sim/errors.h"

namespace overbend::files {

namespace {

constexpr Range side_length = above_to(0.0, 2000.0);  // mm
constexpr Range side_or_none = from_to(0.0, 2000.0);  // mm

tool::Block read_block(const StrictTable& table, double usual_height) {
    tool::Block block;
    block.width = table.number("width_mm", side_length);
    block.left_radius = block.right_radius = table.number_or("corner_radius_mm", 0.0, side_or_none);
    block.height = table.number_or("height_mm", usual_height, side_length);
    return block;
}

WoundSprings read_wound(const StrictTable& table) {
    WoundSprings wound;
    wound.each.wire = table.number("wire_mm", above_to(0.0, 100.0));
    wound.each.coil_diameter = table.number("coil_mm", above_to(0.0, 500.0));
    wound.each.turns = table.number("turns", above_to(0.0, 200.0));
    wound.each.shear_modulus = table.number("shear_modulus_MPa", from_to(1000.0, 1e6));
    wound.count = table.whole_number_or("count", 1, 1, 1000);
    wound.preload = table.number_or("preload_N", 0.0, from_to(0.0, 1e8));
    return wound;
}

// Wound springs share the strip's width.
tool::Spring shared(const WoundSprings& wound, double strip_width) {
    tool::Spring spring;
    spring.preload = wound.preload / strip_width;
    spring.rate = wound.count * tool::spring_rate(wound.each) / strip_width;
    return spring;
}

struct SpringAsGiven {
    tool::Spring spring;
    std::optional<WoundSprings> wound;
};

SpringAsGiven read_spring(const StrictTable& tool_table, double strip_width) {
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
    SpringAsGiven found;
    tool::Spring& spring = found.spring;
    try {
        if (wound) found.wound = read_wound(table);
        if (wound) spring = shared(*found.wound, strip_width);
        if (!wound) spring.preload = table.number_or("preload_N_per_mm", 0.0, from_to(0.0, 1e5));
        if (!wound) spring.rate = table.number_or("rate_N_per_mm2", 0.0, from_to(0.0, 1e5));
        spring.solid = table.number_or("travel_mm", spring.solid, above_to(0.0, 1000.0));
        tool::check(spring);
    } catch (const OutOfRange& error) {
        table.complain("", error.name + ": " + error.wrong, error.right);
    }
    return found;
}

}  // namespace

Shape read_flat_punch(const StrictTable& table) {
    return FlatPunch{read_block(table, usual::flat_height)};
}

Shape read_flat_die(const StrictTable& table) {
    return FlatDie{read_block(table, usual::flat_height)};
}

Shape read_wiping_punch(const StrictTable& table) {
    WipingPunch punch{read_block(table, usual::wiping_height)};
    punch.clearance = table.number("clearance_mm", side_length);
    return punch;
}

Shape read_wiping_die(const StrictTable& table) {
    tool::Block block;
    block.width = table.number("width_mm", side_length);
    block.right_radius = table.number("edge_radius_mm", side_length);
    block.height = table.number_or("height_mm", usual::wiping_height, side_length);
    return WipingDie{block};
}

Shape read_pad(const StrictTable& table, double strip_width) {
    const char* const right =
        "give { preload_N_per_mm, rate_N_per_mm2 } or a wound spring's { wire_mm, coil_mm, "
        "turns, shear_modulus_MPa }";
    if (!table.has("spring")) table.complain_missing("spring", right);
    const SpringAsGiven given = read_spring(table, strip_width);
    return Pad{read_block(table, usual::pad_height), given.spring, given.wound};
}

Shape read_clamp(const StrictTable& table, double strip_width) {
    Clamp clamp{read_block(table, usual::pad_height), std::nullopt};
    if (!table.has("spring")) return clamp;
    const SpringAsGiven given = read_spring(table, strip_width);
    clamp.spring = given.spring;
    clamp.wound = given.wound;
    return clamp;
}

}  // namespace overbend::files
