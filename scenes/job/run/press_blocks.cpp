#include "scenes/job/run/press_blocks.h"

#include <algorithm>
#include <cmath>

#include "sim/tool/block.h"

namespace overbend::job {

using tool::Role;

tool::ToolSet press_blocks(const files::Case& c, const tool::RigidTool& punch, const tool::RigidTool& die) {
    tool::ToolSet blocks;
    if (!c.press) return blocks;
    const auto stack = [&](const std::optional<files::PressBlock>& b, const char* name, Role role,
                           double& y) {
        if (!b) return;
        const bool up = role == Role::holder || role == Role::ram;
        const tool::Block block{b->width, 0.0, 0.0, b->height};
        blocks.push_back({name, role, up ? tool::block_facing_down(block) : tool::block_facing_up(block),
                          tool::Vec2(0.0, y)});
        y += up ? b->height : -b->height;
    };
    double top = punch.position.y() + punch.outline.box().high.y();
    stack(c.press->punch_holder, "punch holder", Role::holder, top);
    stack(c.press->ram, "ram", Role::ram, top);
    double bottom = die.position.y() + die.outline.box().low.y();
    stack(c.press->die_holder, "die holder", Role::die_holder, bottom);
    stack(c.press->bed, "bed", Role::bed, bottom);
    return blocks;
}

namespace {

constexpr double over_the_edge = 3.0;  // thicknesses that a bent-down end may stand out below the gauge

// How far right the strip reaches, at the gauge's height and anywhere.
struct Reach {
    double at_height = 0.0, anywhere = 0.0;
};
Reach reach_of(const files::Case& c, const strip::StripState& placed) {
    Reach reach;
    for (int i = 0; i < placed.nodes(); ++i)
        for (const double side : {0.5, -0.5}) {
            const double x = placed.x[i] - side * placed.thickness * std::sin(placed.theta[i]);
            const double y = placed.y[i] + side * placed.thickness * std::cos(placed.theta[i]);
            reach.anywhere = std::max(reach.anywhere, x);
            if (y >= -c.thickness && y <= c.press->gauge->height)
                reach.at_height = std::max(reach.at_height, x);
        }
    return reach;
}

}  // namespace

bool gauge_finds_no_edge(const files::Case& c, const strip::StripState& placed) {
    if (!c.press || !c.press->gauge) return false;
    const Reach reach = reach_of(c, placed);
    return reach.at_height <= 0.0 || reach.anywhere > reach.at_height + over_the_edge * c.thickness;
}

tool::ToolSet gauge_at(const files::Case& c, const strip::StripState& placed) {
    if (!c.press || !c.press->gauge || gauge_finds_no_edge(c, placed)) return {};
    const files::Gauge& gauge = *c.press->gauge;
    const double face = reach_of(c, placed).at_height;
    // its middle at the origin, its lower edge a thickness below the die's top face
    const tool::Block finger{gauge.length, 0.0, 0.0, gauge.height + c.thickness};
    tool::RigidTool stands{"gauge", Role::gauge, tool::block_facing_down(finger),
                           tool::Vec2(face + 0.5 * gauge.length, -c.thickness)};
    stands.draws_back = gauge.draws_back;
    return {stands};
}

double gauge_distance(const tool::ToolSet& tools) {
    for (const tool::RigidTool& t : tools)
        if (t.role == Role::gauge) return t.position.x() + t.outline.box().low.x();
    return 0.0;
}

}  // namespace overbend::job
