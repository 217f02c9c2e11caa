// What stands in the press during a stroke: rigid outlines with their place and their part in the work.
//
// Press coordinates: x to the right, y up; the punch's axis is x = 0; the top face of the die is y = 0.
// Units  mm.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/tool/arc_outline.h"
#include "sim/tool/spring.h"

namespace overbend::tool {

// A pad stands below the strip on a spring and presses up; a clamp stands above it on a spring and presses
// down. A holder carries the punch, a die holder the die. Only the first four press on the strip.
enum class Role { punch, die, pad, clamp, holder, die_holder, ram, bed, gauge };

inline bool presses(Role role) {
    return role == Role::punch || role == Role::die || role == Role::pad || role == Role::clamp;
}

const char* role_word(Role role);  // "punch", "die", ...

struct RigidTool {
    std::string name;  // as in the case file
    Role role = Role::die;
    ArcOutline outline;  // own coordinates: a punch with the lowest point of its nose at the origin,
                         // a die with the middle of its groove at x = 0 and its top face at y = 0
    Vec2 position = Vec2::Zero();  // of the origin, in press coordinates; for the punch at first touch
    std::optional<Spring> spring =
        std::nullopt;           // of a pad or clamp; without one it stands as firm as a die or a punch
    bool clamp_on_ram = false;  // a clamp's spring stands on the ram; else in the press's frame
    double draws_back = 0.0;    // mm to the right, once the punch has touched the strip, >= 0: of a gauge
    // True for tools that move with the ram: their position is lowered by the travel.
    bool moves_with_ram() const {
        return role == Role::punch || role == Role::ram || role == Role::holder ||
               (role == Role::clamp && clamp_on_ram);
    }
    // Which way a compressed spring lets the tool go: a pad down (-1), a clamp up (+1).
    double gives_way() const { return role == Role::clamp ? 1.0 : -1.0; }
};

using ToolSet = std::vector<RigidTool>;

}  // namespace overbend::tool
