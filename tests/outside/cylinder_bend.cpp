#include "tests/outside/cylinder_bend.h"

#include <algorithm>

#include "sim/tool/arc_outline.h"
#include "sim/tool/figures.h"
#include "sim/units.h"

namespace overbend::tests {

namespace {

void check(const CylinderBend& b) {
    tool::require_above_zero("punch radius", b.punch_radius);
    tool::require_above_zero("shoulder radius", b.shoulder_radius);
    job::at_least("cavity radius", b.cavity_radius, b.punch_radius + b.thickness,
                  "leaves no room for the strip round the punch");
    job::at_least("flange", b.flange, b.cavity_radius + b.shoulder_radius + b.thickness,
                  "does not reach over the shoulder");
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
    check(b);
    job::StripCase s = job::strip_case(b, 2.0 * b.flange);
    s.job.run.elements_per_thickness = std::max(1.0, 0.5 * b.elements_per_thickness);
    job::add_bend(s, "bend", 0.5 * pi, b.flange, 0.0);
    s.zones.front().core = std::min(b.flange, 0.5 * pi * (b.punch_radius + 0.5 * b.thickness));
    s.read_at = {0.0, 2.0 * b.flange};
    s.job.tools = {{"punch", files::OutlineTool{punch_outline(b)}},
                   {"die", files::OutlineTool{die_outline(b)}}};
    job::StripStroke stroke = job::set_up(s, job::only_step(s));
    constexpr double squeezed = 0.8;  // of the thickness, at the cavity's bottom
    stroke.scene.stop.travel_limit = stroke.scene.tools.front().position.y() + b.shoulder_radius +
                                     b.cavity_radius - squeezed * b.thickness;
    return stroke;
}

}  // namespace overbend::tests
