#include <algorithm>
#include <cmath>

#include "scenes/job/run/strip_bends.h"

namespace overbend::job {

StripCase vee_case(const VeeBend& b) {
    const double right = b.flange.value_or(2.0 * b.die_opening), left = b.left_flange.value_or(right);
    StripCase s = strip_case(b, left + right);
    // Slimmer than a strip is bent before it slips through.
    constexpr double sharpest = 2.0;
    add_bend(s, "bend", sharpest, left, 0.0);
    // The strip is bent round the nose and a little beside it; it is touched as far as it slides over the
    // shoulders.
    s.zones = {{left, std::max(b.thickness, 0.4 * b.thickness + 0.8 * b.nose_radius),
                b.die_opening + 2.0 * b.thickness}};
    s.read_at = {0.0, left + right};

    const double shank = std::max(12.0, 3.0 * b.nose_radius);
    const double height = 60.0 + shank / std::tan(0.5 * b.punch_angle);
    const double width = b.die_opening + 4.0 * b.shoulder_radius + 10.0;
    s.job.tools = {{"punch", tool::VeePunch{b.punch_angle, b.nose_radius, height, shank}}};
    if (b.die_angle) {
        const tool::VeeFace face{*b.die_angle, b.die_opening, b.shoulder_radius, b.bottom_radius};
        const double below = std::max(20.0, b.die_opening);
        s.job.tools.push_back({"die", tool::VeeDie{{face}, width, tool::groove_depth(face) + below}});
    } else {
        const double depth = open_die_travel * b.die_opening;
        s.job.tools.push_back({"die", tool::OpenDie{b.die_opening, b.shoulder_radius, depth, width}});
    }
    return s;
}

StripStroke vee_stroke(const VeeBend& b) {
    const StripCase s = vee_case(b);
    files::Step step = only_step(s);
    step.shift = b.off_centre;
    return set_up(s, step);
}

VeeResult bend_vee(const VeeBend& bend, const stroke::Stop& stop, const stroke::StrokeOptions& options) {
    StripResult r = press_strip(vee_stroke(bend), stop, options);
    return {r.bends.front(), std::move(r.stroke)};
}

}  // namespace overbend::job
