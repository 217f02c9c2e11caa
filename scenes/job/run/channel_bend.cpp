#include "scenes/job/run/channel_bend.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sim/errors.h"
#include "sim/stroke/placing.h"
#include "sim/tool/block.h"
#include "sim/tool/die.h"
#include "sim/tool/figures.h"
#include "sim/tool/punch.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

double flange_of(const ChannelBend& b) {
    const double flange = b.flange.value_or(b.depth + b.shoulder_radius + b.thickness);
    const double least = b.shoulder_radius + b.clearance.value_or(1.1 * b.thickness) + 2.0 * b.thickness;
    if (flange >= least) return flange;
    throw OutOfRange("flange", tool::mm(flange) + " does not reach over the die's shoulder",
                     "give at least " + tool::mm(least));
}

// Between the walls, with a quarter of the thickness beside it, on the floor when its spring is solid.
tool::RigidTool make_pad(const ChannelBend& b, double opening, double height) {
    const double play = 0.25 * b.thickness;
    tool::Block block;
    block.width = opening - 2.0 * play;
    block.left_radius = block.right_radius = std::min(play, 0.25 * block.width);
    block.height = height;
    tool::RigidTool pad{"pad", tool::Role::pad, tool::block_facing_up(block), tool::Vec2::Zero()};
    pad.spring = *b.pad;
    pad.spring->solid = b.depth;
    tool::check(*pad.spring);
    return pad;
}

tool::ToolSet channel_tools(const ChannelBend& b) {
    const double opening = b.punch_width + 2.0 * b.clearance.value_or(1.1 * b.thickness);
    const double wall = b.depth + flange_of(b) + 4.0 * b.thickness;
    const tool::ChannelPunch punch{b.punch_width,
                                   b.corner_radius,
                                   0.0,
                                   b.corner_radius + wall,
                                   b.punch_width,
                                   tool::Shank::middle,
                                   b.corner_radius + wall + 4.0 * b.thickness};
    const double pad_height = b.pad ? std::max(3.0 * b.thickness, 0.25 * opening) : 0.0;
    const tool::ChannelDie die{opening,
                               b.shoulder_radius,
                               b.depth + pad_height,
                               0.0,
                               opening + 4.0 * b.shoulder_radius + 2.0 * flange_of(b),
                               b.depth + pad_height + 6.0 * b.thickness};
    tool::ToolSet tools;
    tools.push_back({"punch", tool::Role::punch, tool::make_outline(punch), tool::Vec2::Zero()});
    tools.push_back({"die", tool::Role::die, tool::make_outline(die), tool::Vec2::Zero()});
    tool::check_pair(punch, die, b.thickness);
    if (b.depth <= b.shoulder_radius)
        throw OutOfRange("channel depth", tool::mm(b.depth) + " ends within the shoulders' arcs",
                         "give more than " + tool::mm(b.shoulder_radius));
    if (b.pad) tools.push_back(make_pad(b, opening, pad_height));
    return tools;
}

}  // namespace

StripStroke channel_stroke(const ChannelBend& b) {
    stroke::StrokeScene scene = begin_scene(b);
    scene.tools = channel_tools(b);
    const double flange = flange_of(b), middle = 0.5 * b.punch_width + flange;
    const double half_arc = half_core(b.corner_radius, b.thickness, 0.5 * pi) - b.thickness;
    const double bend_line = 0.5 * b.punch_width - b.corner_radius + half_arc;  // from the middle
    std::vector<strip::FineZone> zones;
    for (const double side : {-1.0, 1.0}) {
        strip::FineZone zone;
        zone.centre = middle + side * bend_line;
        zone.core = half_arc + b.thickness;
        zone.reach = std::max(zone.core, bend_line + flange);
        zones.push_back(zone);
    }
    lay_strip(scene, b, 2.0 * middle, zones);
    stroke::place(scene, middle, middle, 0.0);
    constexpr double squeezed = 0.7;  // thicknesses that are left when the tools are closed for good
    const double limit = scene.tools.front().position.y() + b.depth - squeezed * b.thickness;
    const double wall = 0.5 * (middle - bend_line - half_arc);  // its middle, from the strip's end
    return finish(std::move(scene),
                  {{"left bend", 1.0, wall, middle}, {"right bend", 1.0, middle, 2.0 * middle - wall}},
                  limit);
}

}  // namespace overbend::job
