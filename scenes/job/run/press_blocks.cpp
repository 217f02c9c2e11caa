#include "scenes/job/run/press_blocks.h"

#include <algorithm>
#include <cmath>

#include "sim/tool/block.h"

namespace overbend::job {

namespace {

using tool::Role;

tool::Block plain(const files::PressBlock& b) {
    return {b.width, 0.0, 0.0, b.height};
}

}  // namespace

tool::ToolSet press_blocks(const files::Case& c, const tool::RigidTool& punch, const tool::RigidTool& die) {
    tool::ToolSet blocks;
    if (!c.press) return blocks;
    double top = punch.position.y() + punch.outline.box().high.y();
    const auto stack_up = [&](const std::optional<files::PressBlock>& b, const char* name, Role role) {
        if (!b) return;
        blocks.push_back({name, role, tool::block_facing_down(plain(*b)), tool::Vec2(0.0, top)});
        top += b->height;
    };
    stack_up(c.press->punch_holder, "punch holder", Role::holder);
    stack_up(c.press->ram, "ram", Role::ram);
    double bottom = die.position.y() + die.outline.box().low.y();
    const auto stack_down = [&](const std::optional<files::PressBlock>& b, const char* name, Role role) {
        if (!b) return;
        blocks.push_back({name, role, tool::block_facing_up(plain(*b)), tool::Vec2(0.0, bottom)});
        bottom -= b->height;
    };
    stack_down(c.press->die_holder, "die holder", Role::die_holder);
    stack_down(c.press->bed, "bed", Role::bed);
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
