#include "scenes/process/press_blocks.h"

#include <algorithm>
#include <cmath>

#include "sim/tool/block.h"

namespace overbend::scenes {

namespace {

using tool::Role;

tool::Block plain(const PressBlock& b) {
    return {b.width, 0.0, 0.0, b.height};
}

}  // namespace

tool::ToolSet press_blocks(const Case& c, const tool::RigidTool& punch, const tool::RigidTool& die) {
    tool::ToolSet blocks;
    if (!c.press) return blocks;
    double top = punch.position.y() + punch.outline.box().high.y();
    const auto stack_up = [&](const std::optional<PressBlock>& b, const char* name, Role role) {
        if (!b) return;
        blocks.push_back({name, role, tool::block_facing_down(plain(*b)), tool::Vec2(0.0, top)});
        top += b->height;
    };
    stack_up(c.press->punch_holder, "punch holder", Role::holder);
    stack_up(c.press->ram, "ram", Role::ram);
    double bottom = die.position.y() + die.outline.box().low.y();
    const auto stack_down = [&](const std::optional<PressBlock>& b, const char* name, Role role) {
        if (!b) return;
        blocks.push_back({name, role, tool::block_facing_up(plain(*b)), tool::Vec2(0.0, bottom)});
        bottom -= b->height;
    };
    stack_down(c.press->die_holder, "die holder", Role::die_holder);
    stack_down(c.press->bed, "bed", Role::bed);
    return blocks;
}

tool::ToolSet gauge_at(const Case& c, const strip::StripState& placed) {
    if (!c.press || !c.press->gauge) return {};
    const Gauge& gauge = *c.press->gauge;
    const double low = -c.thickness, high = gauge.height;
    double face = 0.0;
    for (int i = 0; i < placed.nodes(); ++i)
        for (const double side : {0.5, -0.5}) {
            const double x = placed.x[i] - side * placed.thickness * std::sin(placed.theta[i]);
            const double y = placed.y[i] + side * placed.thickness * std::cos(placed.theta[i]);
            if (y >= low && y <= high) face = std::max(face, x);
        }
    if (face <= 0.0) return {};
    // its middle at the origin, its lower edge a thickness below the die's top face
    const tool::Block finger{gauge.length, 0.0, 0.0, gauge.height + c.thickness};
    tool::RigidTool stands{"gauge", Role::gauge, tool::block_facing_down(finger),
                           tool::Vec2(face + 0.5 * gauge.length, low)};
    stands.draws_back = gauge.draws_back;
    return {stands};
}

double gauge_distance(const tool::ToolSet& tools) {
    for (const tool::RigidTool& t : tools)
        if (t.role == Role::gauge) return t.position.x() + t.outline.box().low.x();
    return 0.0;
}

}  // namespace overbend::scenes
