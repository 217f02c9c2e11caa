#include "scenes/job/run/offset_bend.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sim/errors.h"
#include "sim/stroke/placing.h"
#include "sim/tool/die.h"
#include "sim/tool/figures.h"
#include "sim/tool/punch.h"

namespace overbend::job {

namespace {

double land_of(const OffsetBend& b) {
    const double corner = std::max(b.corner_radius, b.root_radius) * std::tan(0.5 * b.angle);
    return b.land.value_or(8.0 * b.thickness + corner);
}

tool::ToolSet offset_tools(const OffsetBend& b) {
    const double clearance = b.clearance.value_or(1.05 * b.thickness), land = land_of(b);
    const double height = 2.0 * b.offset + 10.0 * b.thickness;
    const tool::OffsetPunch punch{b.offset, b.angle, b.corner_radius, b.root_radius, clearance, land, height};
    const tool::OffsetDie die{b.offset, b.angle, b.corner_radius, b.root_radius, land, height};
    tool::ToolSet tools;
    tools.push_back({"punch", tool::Role::punch, tool::make_outline(punch), tool::Vec2::Zero()});
    tools.push_back({"die", tool::Role::die, tool::make_outline(die), tool::Vec2::Zero()});
    tool::check_pair(punch, die, b.thickness);
    return tools;
}

}  // namespace

StripStroke offset_stroke(const OffsetBend& b) {
    stroke::StrokeScene scene = begin_scene(b);
    if (b.weighs)
        throw OutOfRange("gravity", "half the strip overhangs the edge of the offset die and would fall off",
                         "leave gravity out: a hand or a gauge holds the strip");
    scene.tools = offset_tools(b);
    const double slope = b.offset / std::sin(b.angle), half_run = 0.5 * b.offset / std::tan(b.angle);
    const double middle = b.flange.value_or(land_of(b) + 0.5 * slope);
    const double least =
        half_run + b.thickness + (b.corner_radius + b.root_radius + b.thickness) * std::tan(0.5 * b.angle);
    if (!(middle >= least + b.thickness))
        throw OutOfRange("flange", tool::mm(middle) + " does not reach over the corners",
                         "give at least " + tool::mm(least + b.thickness));

    std::vector<strip::FineZone> zones;
    for (const double side : {-0.5, 0.5}) {
        strip::FineZone zone;
        zone.centre = middle + side * slope;
        zone.core = half_core(b.corner_radius, b.thickness, b.angle);
        zone.reach = std::max(zone.core, middle);
        zones.push_back(zone);
    }
    lay_strip(scene, b, 2.0 * middle, zones);
    stroke::place(scene, middle, std::min(middle, b.offset + 2.0 * b.thickness), 0.0);
    constexpr double squeezed = 0.7;  // thicknesses that are left when the tools are closed for good
    const double limit = scene.tools.front().position.y() + b.offset - squeezed * b.thickness;
    return finish(std::move(scene),
                  {{"lower bend", 1.0, 0.0, middle}, {"upper bend", -1.0, middle, 2.0 * middle}}, limit);
}

}  // namespace overbend::job
