#include "scenes/job/run/wiping_bend.h"

#include <algorithm>
#include <utility>

#include "sim/errors.h"
#include "sim/stroke/placing.h"
#include "sim/tool/block.h"
#include "sim/tool/figures.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

void check(const WipingBend& b, double clearance, double hold) {
    if (!(clearance >= b.thickness))
        throw OutOfRange("clearance", tool::mm(clearance) + " is less than the strip's thickness",
                         "give at least " + tool::mm(b.thickness));
    const double least = clearance + b.corner_radius + b.thickness;
    if (!(b.flange >= least))
        throw OutOfRange("flange", tool::mm(b.flange) + " does not reach under the face of the punch",
                         "give at least " + tool::mm(least));
    if (!(hold >= 2.0 * b.thickness))
        throw OutOfRange("held length", tool::mm(hold) + " is too short to hold the strip",
                         "give at least " + tool::mm(2.0 * b.thickness));
    tool::require_above_zero("edge radius of the die", b.edge_radius);
}

// How far the punch can go: its corner has then passed the flange's end.
double greatest_travel(const WipingBend& b) {
    return b.flange + b.edge_radius + b.corner_radius;
}

tool::ToolSet wiping_tools(const WipingBend& b, double clearance, double hold) {
    const double t = b.thickness, height = greatest_travel(b) + 6.0 * t;
    const double die_width = hold + b.edge_radius;
    const tool::Block die{die_width, 0.0, b.edge_radius, height};
    const tool::Block punch{b.flange + b.corner_radius + t, b.corner_radius, b.corner_radius, height};
    const tool::Block clamp{hold, std::min(0.5 * t, 0.25 * hold), 0.0, std::max(0.4 * hold, 4.0 * t)};
    tool::ToolSet tools;
    tools.push_back({"punch", tool::Role::punch, tool::block_facing_down(punch),
                     tool::Vec2(clearance + 0.5 * punch.width, 0.0)});
    tools.push_back({"die", tool::Role::die, tool::block_facing_up(die), tool::Vec2(-0.5 * die_width, 0.0)});
    tool::RigidTool holder{"clamp", tool::Role::clamp, tool::block_facing_down(clamp),
                           tool::Vec2(-b.edge_radius - 0.5 * hold, 0.0)};
    holder.spring = b.clamp;
    holder.clamp_on_ram = b.clamp && b.clamp_on == ClampStand::ram;
    if (b.clamp) tool::check(*b.clamp);
    tools.push_back(std::move(holder));
    return tools;
}

}  // namespace

StripStroke wiping_stroke(const WipingBend& b) {
    const double clearance = b.clearance.value_or(1.1 * b.thickness),
                 hold = b.hold.value_or(10.0 * b.thickness);
    stroke::StrokeScene scene = begin_scene(b);
    check(b, clearance, hold);
    scene.tools = wiping_tools(b, clearance, hold);

    const double half_arc = half_core(b.edge_radius, b.thickness, 0.5 * pi) - b.thickness;
    const double length = hold + b.edge_radius + b.flange;
    strip::FineZone zone;
    zone.centre = hold + half_arc;  // the bend begins where the edge's arc does
    zone.core = half_arc + b.thickness;
    zone.reach = std::max(zone.core, length);
    lay_strip(scene, b, length, {zone});
    stroke::place(scene, hold, hold, -b.edge_radius);
    const double flange_middle = 0.5 * (hold + 2.0 * half_arc + length);
    return finish(std::move(scene), {{"bend", -1.0, 0.5 * hold, std::min(flange_middle, length)}},
                  greatest_travel(b));
}

}  // namespace overbend::job
