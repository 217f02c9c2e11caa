#include "scenes/job/run/step_tools.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "scenes/files/case/tool_outline.h"
#include "scenes/job/run/strip_stroke.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

template <class Shape>
const Shape* shape_of(const files::Tool& t) {
    return std::get_if<Shape>(&t.shape);
}

// The flats beside a bend, left and right as it lies.
struct Beside {
    double left = 0.0, right = 0.0;
};
Beside flats_beside(const files::Case& c, const files::Step& step, int bend) {
    const double before = c.part.flats[bend], after = c.part.flats[bend + 1];
    return step.first == files::First::left ? Beside{before, after} : Beside{after, before};
}

double blank_to_the_right(const files::Step& step) {
    return step.first == files::First::left ? 1.0 : -1.0;
}

// ---- how the tools of each kind of work take the strip; reach alone is the same on both sides

struct Grip {
    double reach = 0.0, half_span = 0.0, depth = 1e300;
};

Grip vee_grip(double opening, double shoulder, double depth, double bend_angle, double thickness) {
    // Under load the strip runs along the flanks of the angle it has: its length between the shoulders.
    const double half_included = 0.5 * (pi - std::min(std::abs(bend_angle) + 0.1, 2.6));
    return {0.5 * opening / std::sin(half_included) + shoulder + 2.0 * thickness, 0.5 * opening + shoulder,
            depth};
}

// How far a pad in a channel goes before it or its spring is solid.
double pad_travel(const files::Pad& pad, const tool::ChannelDie& die) {
    return std::min(pad.spring.solid, die.depth - pad.block.height);
}

Grip channel_grip(const files::Case& c, const files::Step& step, const tool::ChannelDie& die) {
    const double t = c.thickness;
    const files::Pad* pad = step.pad ? shape_of<files::Pad>(c.tools[*step.pad]) : nullptr;
    const double depth = pad ? pad_travel(*pad, die) : die.depth;
    return {depth + 2.0 * die.shoulder_radius + 4.0 * t, 0.5 * die.die_opening, depth - 0.7 * t};
}

Grip grip_of(const files::Case& c, const files::Step& step) {
    const files::Tool& die = c.tools[step.die];
    double angle = 0.0;
    for (const int b : step.bends) angle = std::max(angle, std::abs(c.part.bends[b].angle));
    const double t = c.thickness;
    if (const tool::VeeDie* vee = shape_of<tool::VeeDie>(die)) {
        const tool::VeeFace& face = vee->faces[step.die_face - 1];
        return vee_grip(face.die_opening, face.shoulder_radius, tool::groove_depth(face) - 0.5 * t, angle, t);
    }
    if (const tool::OpenDie* open = shape_of<tool::OpenDie>(die))
        return vee_grip(open->die_opening, open->shoulder_radius, open->depth - t, angle, t);
    if (const tool::RadiusDie* groove = shape_of<tool::RadiusDie>(die))
        return vee_grip(groove->die_opening, groove->shoulder_radius, tool::groove_depth(*groove) - 0.5 * t,
                        angle, t);
    if (const tool::OffsetDie* offset = shape_of<tool::OffsetDie>(die))
        return {offset->land + offset->offset + 2.0 * t, offset->offset + 2.0 * t, offset->offset - 0.7 * t};
    if (const tool::ChannelDie* channel = shape_of<tool::ChannelDie>(die))
        return channel_grip(c, step, *channel);
    const tool::Box& box = std::get<files::OutlineTool>(die.shape).outline.box();
    return {0.5 * (box.high.x() - box.low.x()), 0.25 * (box.high.x() - box.low.x()),
            box.high.y() - box.low.y()};
}

// The flange lies on the die, the hem stands above it; the hem's middle is under the punch's.
Hold hem_hold(const files::Case& c, const Blank& blank, const files::Step& step) {
    const int b = step.bends.front();
    const Beside flats = flats_beside(c, step, b);
    Hold hold;
    // and a little more, or the strip's end would lie outside the zone
    hold.reach_left = blank.half_arc[b] + flats.left + c.thickness;
    hold.reach_right = blank.half_arc[b] + flats.right + c.thickness;
    hold.level_at = blank.bend_line[b] + blank_to_the_right(step) * (blank.half_arc[b] + 0.5 * flats.right);
    hold.half_span = 0.4 * flats.right;
    hold.at_x = 0.5 * (flats.right - flats.left) + step.shift;
    hold.depth = -1.6 * c.thickness;  // both layers are squeezed
    return hold;
}

// The strip lies on the die up to where its edge rounds; there the bend begins.
Hold wiping_hold(const files::Case& c, const Blank& blank, const files::Step& step,
                 const files::WipingDie& die) {
    const int b = step.bends.front();
    const Beside flats = flats_beside(c, step, b);
    const double edge = die.block.right_radius;
    const double half_arc = half_core(edge, c.thickness, std::abs(c.part.bends[b].angle)) - c.thickness;
    const tool::Block& clamp = std::get<files::Clamp>(c.tools[*step.clamp].shape).block;
    Hold hold;
    hold.reach_left = half_arc + std::min(flats.left, clamp.width + c.thickness);
    hold.reach_right = blank.half_arc[b] + flats.right + c.thickness;
    hold.level_at = blank.bend_line[b] - blank_to_the_right(step) * half_arc;
    hold.half_span = flats.left;
    hold.at_x = -edge + step.shift;
    hold.depth = flats.right + 2.0 * edge;
    hold.sense = -1.0;
    return hold;
}

tool::RigidTool stand(const files::Tool& t, tool::Role role, int face, double x) {
    return {t.name, role, files::tool_outline(t, face), tool::Vec2(x, 0.0)};
}

// Where a block's own middle stands: the wiping die's wall at x = 0, its punch and clamp beside it.
double stands_at(const files::Case& c, const files::Step& step, const files::Tool& t) {
    const files::WipingDie* die = shape_of<files::WipingDie>(c.tools[step.die]);
    if (shape_of<files::WipingDie>(t)) return -0.5 * die->block.width;
    if (const files::WipingPunch* punch = shape_of<files::WipingPunch>(t))
        return punch->clearance + 0.5 * punch->block.width;
    if (const files::Clamp* clamp = shape_of<files::Clamp>(t))
        return (die ? -die->block.right_radius : 0.0) - 0.5 * clamp->block.width;
    return 0.0;
}

}  // namespace

Hold hold_of(const files::Case& c, const Blank& blank, const files::Step& step) {
    if (shape_of<files::FlatDie>(c.tools[step.die])) return hem_hold(c, blank, step);
    if (const files::WipingDie* die = shape_of<files::WipingDie>(c.tools[step.die]))
        return wiping_hold(c, blank, step, *die);
    const Grip grip = grip_of(c, step);
    Hold hold;
    hold.reach_left = hold.reach_right = grip.reach;
    hold.level_at = 0.5 * (blank.bend_line[step.bends.front()] + blank.bend_line[step.bends.back()]);
    hold.half_span = grip.half_span;
    hold.at_x = step.shift;
    hold.depth = grip.depth;
    return hold;
}

tool::ToolSet tools_of(const files::Case& c, const files::Step& step) {
    const auto stand_in = [&](int index, tool::Role role, int face) {
        const files::Tool& t = c.tools[index];
        return stand(t, role, face, stands_at(c, step, t));
    };
    tool::ToolSet tools;
    tools.push_back(stand_in(step.punch, tool::Role::punch, 1));
    tools.push_back(stand_in(step.die, tool::Role::die, step.die_face));
    if (step.pad) {
        const files::Pad& pad = std::get<files::Pad>(c.tools[*step.pad].shape);
        tools.push_back(stand_in(*step.pad, tool::Role::pad, 1));
        tools.back().spring = pad.spring;
        if (const auto* channel = shape_of<tool::ChannelDie>(c.tools[step.die]))
            tools.back().spring->solid = pad_travel(pad, *channel);
    }
    if (step.clamp) {
        tools.push_back(stand_in(*step.clamp, tool::Role::clamp, 1));
        tools.back().spring = std::get<files::Clamp>(c.tools[*step.clamp].shape).spring;
        tools.back().clamp_on_ram = step.clamp_on == files::ClampOn::ram;
    }
    return tools;
}

}  // namespace overbend::job
