#include "scenes/job/run/vee_bend.h"

#include <algorithm>
#include <cmath>

#include "scenes/job/run/profile.h"
#include "sim/strip/mesh.h"
#include "sim/stroke/placing.h"
#include "sim/tool/die.h"
#include "sim/tool/punch.h"

namespace overbend::job {

namespace {

tool::ToolSet vee_tools(const VeeBend& b) {
    const double shank = std::max(12.0, 3.0 * b.nose_radius);
    const double wedge = 0.5 * shank / std::tan(0.5 * b.punch_angle);  // its height, and a little more
    const tool::VeePunch punch{b.punch_angle, b.nose_radius, std::max(60.0, 1.2 * wedge), shank};
    const double width = b.die_opening + 4.0 * b.shoulder_radius + 10.0;
    tool::ToolSet tools;
    tools.push_back({"punch", tool::Role::punch, tool::make_outline(punch), tool::Vec2::Zero()});
    if (b.die_angle) {
        const tool::VeeFace face{*b.die_angle, b.die_opening, b.shoulder_radius, b.bottom_radius};
        tool::check_pair(punch, face, b.thickness);
        const double height = tool::groove_depth(face) + std::max(20.0, b.die_opening);
        tools.push_back({"die", tool::Role::die, tool::make_outline(tool::VeeDie{{face}, width, height}, 1),
                         tool::Vec2::Zero()});
    } else {
        const tool::OpenDie die{b.die_opening, b.shoulder_radius, 3.0 * b.die_opening, width};
        tools.push_back({"die", tool::Role::die, tool::make_outline(die), tool::Vec2::Zero()});
    }
    return tools;
}

// Where the tools have closed on the strip. A nose with the strip round it that fills the groove's bottom can
// squeeze it a little further.
double closed_travel(const VeeBend& b) {
    constexpr double squeezed = 0.8;  // thicknesses that are left, at least
    const tool::VeeFace face{*b.die_angle, b.die_opening, b.shoulder_radius, b.bottom_radius};
    const double sine = std::sin(0.5 * *b.die_angle), depth = tool::groove_depth(face);
    const double beside_bottom = b.bottom_radius - b.nose_radius;
    const double between_flanks = b.thickness * sine + beside_bottom * (1.0 - sine);  // at that depth
    const double on_flanks = (between_flanks - squeezed * b.thickness) / sine;
    return depth + std::max(0.0, std::min((1.0 - squeezed) * b.thickness, on_flanks));
}

}  // namespace

StripStroke vee_stroke(const VeeBend& b) {
    const double right = b.flange.value_or(2.0 * b.die_opening), left = b.left_flange.value_or(right);
    stroke::StrokeScene scene = begin_scene(b);
    scene.tools = vee_tools(b);

    // The strip is bent round the nose and a little beside it; it is touched as far as it slides over the
    // shoulders.
    strip::FineZone zone;
    zone.centre = left + b.off_centre;
    zone.core = std::max(b.thickness, 0.4 * b.thickness + 0.8 * b.nose_radius);
    zone.reach = b.die_opening + 2.0 * b.thickness;
    lay_strip(scene, b, left + right, {zone});
    scene.zone = {zone.centre - zone.reach, zone.centre + zone.reach};
    stroke::place(scene, left - b.off_centre, b.die_opening, 0.0);
    const double limit = b.die_angle ? closed_travel(b) : open_die_travel * b.die_opening;
    return finish(std::move(scene), {{"bend", 1.0, 0.0, left + right}}, limit);
}

VeeResult bend_vee(const VeeBend& bend, const stroke::Stop& stop, const stroke::StrokeOptions& options) {
    StripResult r = press_strip(vee_stroke(bend), stop, options);
    const BendReading& read = r.bends.front();
    return {std::move(r.stroke), read.loaded, read.free, read.inside_radius_loaded, read.inside_radius_free};
}

}  // namespace overbend::job
