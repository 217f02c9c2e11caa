// Blocks, by the work they do: flat tools lay a hem, wiping tools wipe a flange down, pads and clamps hold. Its kinds, as kinds.h says.

#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "scenes/files/case/kind.h"
#include "sim/tool/block.h"
#include "sim/tool/spring.h"

namespace overbend::files {

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
Kind kind_of(const FlatPunch&);
void describe(Fields& f, FlatPunch& t);
std::string figures(const FlatPunch& t);
void measure(const drawing::Measurer& m, const FlatPunch& t);

Kind kind_of(const FlatDie&);
void describe(Fields& f, FlatDie& t);
std::string figures(const FlatDie& t);
void measure(const drawing::Measurer& m, const FlatDie& t);

Kind kind_of(const WipingPunch&);
void describe(Fields& f, WipingPunch& t);
std::string figures(const WipingPunch& t);
void measure(const drawing::Measurer& m, const WipingPunch& t);

Kind kind_of(const WipingDie&);
void describe(Fields& f, WipingDie& t);
std::string figures(const WipingDie& t);
void measure(const drawing::Measurer& m, const WipingDie& t);

Kind kind_of(const Pad&);
void describe(Fields& f, Pad& t);
std::string figures(const Pad& t);
void measure(const drawing::Measurer& m, const Pad& t);

Kind kind_of(const Clamp&);
void describe(Fields& f, Clamp& t);
std::string figures(const Clamp& t);
void measure(const drawing::Measurer& m, const Clamp& t);

void describe(Fields& f, SpringTable& t);
void describe(Fields& f, tool::Spring& t);
void describe(Fields& f, WoundSprings& t);

}  // namespace overbend::files
