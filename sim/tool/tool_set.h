// What stands in the press during a stroke: rigid outlines with their place and their part in the work.
//
// Press coordinates: x to the right, y up; the punch's axis is x = 0; the top face of the die is y = 0.
// Units  mm.

#pragma once

#include <string>
#include <vector>

#include "sim/tool/arc_outline.h"

namespace overbend::tool {

enum class Role { punch, die, pad, holder, ram, bed, gauge };

const char* role_word(Role role);  // "punch", "die", ...

struct RigidTool {
    std::string name;  // as in the case file
    Role role = Role::die;
    ArcOutline outline;  // own coordinates: a punch with the lowest point of its nose at the origin,
                         // a die with the middle of its groove at x = 0 and its top face at y = 0
    Vec2 position = Vec2::Zero();  // of the origin, in press coordinates; for the punch at first touch
    // True for what goes down with the ram: its position is lowered by the travel.
    bool moves_with_ram() const { return role == Role::punch || role == Role::ram || role == Role::holder; }
};

using ToolSet = std::vector<RigidTool>;

}  // namespace overbend::tool
