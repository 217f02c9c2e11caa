// Blocks, by the work they do: flat tools lay a hem, wiping tools wipe a flange down, pads and clamps hold.

#pragma once

#include <optional>
#include <string>
#include <variant>

#include "sim/tool/block.h"
#include "sim/tool/spring.h"

namespace overbend::files {

class Fields;

struct FlatPunch {
    tool::Block block;
};
struct FlatDie {
    tool::Block block;
};
struct WipingPunch {
    tool::Block block;
    double clearance = 0.0;  // mm, from the die's wall to the punch's, at least the strip's thickness
};
struct WipingDie {
    tool::Block block;  // its right edge is the one that is wiped over
};
// Wound springs, as a file gives them. The strip's width shares them: they make the Spring beside them.
struct WoundSprings {
    tool::HelicalSpring each;
    int count = 1;
    double preload = 0.0;  // N, of all together
};
struct Pad {
    tool::Block block;
    tool::Spring spring;  // its travel is what the spring itself allows
    std::optional<WoundSprings> wound = std::nullopt;
};
struct Clamp {
    tool::Block block;
    std::optional<tool::Spring> spring;  // absent: firm
    std::optional<WoundSprings> wound = std::nullopt;
};

// By its rate, or as wound springs.
struct SpringTable {
    std::variant<tool::Spring, WoundSprings> spring;
    double travel = tool::Spring().solid;
};

void describe(Fields& f, SpringTable& t);
void describe(Fields& f, tool::Spring& t);
void describe(Fields& f, WoundSprings& t);

}  // namespace overbend::files
