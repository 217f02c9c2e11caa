#include "tests/outside/cylinder_bend.h"

#include <algorithm>
#include <utility>

#include "sim/errors.h"
#include "sim/stroke/placing.h"
#include "sim/tool/arc_outline.h"
#include "sim/tool/figures.h"
#include "sim/units.h"

namespace overbend::tests {

namespace {

void check(const CylinderBend& b) {
    tool::require_above_zero("punch radius", b.punch_radius);
    tool::require_above_zero("shoulder radius", b.shoulder_radius);
    if (b.cavity_radius < b.punch_radius + b.thickness)
        throw OutOfRange("cavity radius",
                         tool::mm(b.cavity_radius) + " leaves no room for the strip round a punch of " +
                             tool::mm(b.punch_radius),
                         "give at least " + tool::mm(b.punch_radius + b.thickness));
    const double least = b.cavity_radius + b.shoulder_radius + b.thickness;
    if (b.flange < least)
        throw OutOfRange("flange", tool::mm(b.flange) + " does not reach over the shoulder",
                         "give at least " + tool::mm(least));
}

// Half a cylinder with upright sides, its lowest point at the origin.
tool::ArcOutline punch_outline(const CylinderBend& b) {
    const double r = b.punch_radius, top = 3.0 * r;
    return tool::from_points(
        {{{-r, r}, 0.0, 1.0}, {{r, r}, 0.0, 0.0}, {{r, top}, 0.0, 0.0}, {{-r, top}, 0.0, 0.0}});
}

// Half a cylinder hollowed out, with a rounded shoulder on either side of its mouth.
tool::ArcOutline die_outline(const CylinderBend& b) {
    const double wall = b.cavity_radius, shoulder = b.shoulder_radius;
    const double side = wall + shoulder + b.flange, bottom = -shoulder - 1.5 * wall;
    const double quarter = 0.41421356237309505;  // bulge of a quarter of a circle
    return tool::from_points({{{side, 0.0}, 0.0, 0.0},
                              {{wall + shoulder, 0.0}, 0.0, quarter},
                              {{wall, -shoulder}, 0.0, -1.0},
                              {{-wall, -shoulder}, 0.0, quarter},
                              {{-wall - shoulder, 0.0}, 0.0, 0.0},
                              {{-side, 0.0}, 0.0, 0.0},
                              {{-side, bottom}, 0.0, 0.0},
                              {{side, bottom}, 0.0, 0.0}});
}

}  // namespace

job::StripStroke cylinder_stroke(const CylinderBend& b) {
    stroke::StrokeScene scene = begin_scene(b);
    check(b);
    scene.tools.push_back({"punch", tool::Role::punch, punch_outline(b), tool::Vec2::Zero()});
    scene.tools.push_back({"die", tool::Role::die, die_outline(b), tool::Vec2::Zero()});
    job::StripOptions coarser = b;
    coarser.elements_per_thickness = std::max(1.0, 0.5 * b.elements_per_thickness);
    strip::FineZone zone;
    zone.centre = b.flange;
    zone.core = std::min(b.flange, 0.5 * pi * (b.punch_radius + 0.5 * b.thickness));
    zone.reach = b.flange;
    lay_strip(scene, coarser, 2.0 * b.flange, {zone});
    stroke::place(scene, b.flange, b.flange, 0.0);
    constexpr double squeezed = 0.8;  // of the thickness, at the cavity's bottom
    const double limit =
        scene.tools.front().position.y() + b.shoulder_radius + b.cavity_radius - squeezed * b.thickness;
    return job::finish(std::move(scene), {{"bend", 1.0, 0.0, 2.0 * b.flange}}, limit);
}

}  // namespace overbend::tests
