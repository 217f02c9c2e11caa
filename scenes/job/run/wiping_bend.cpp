#include <algorithm>

#include "scenes/files/case/work.h"
#include "scenes/job/run/strip_bends.h"
#include "sim/tool/figures.h"
#include "sim/units.h"

namespace overbend::job {

StripStroke wiping_stroke(const WipingBend& b) {
    const double t = b.thickness, clearance = b.clearance.value_or(1.1 * t), hold = b.hold.value_or(10.0 * t);
    at_least("clearance", clearance, t, "is less than the strip's thickness");
    at_least("flange", b.flange, clearance + b.corner_radius + t,
             "does not reach under the face of the punch");
    at_least("held length", hold, 2.0 * t, "is too short to hold the strip");
    tool::require_above_zero("edge radius of the die", b.edge_radius);

    StripCase s = strip_case(b, hold + b.edge_radius + b.flange);
    const double half_arc = files::half_core(b.edge_radius, t, 0.5 * pi) - t;
    add_bend(s, "bend", -0.5 * pi, hold + half_arc, half_arc);  // begins where the edge's arc does

    const double height = b.flange + b.edge_radius + b.corner_radius + 6.0 * t;
    const tool::Block punch{b.flange + b.corner_radius + t, b.corner_radius, b.corner_radius, height};
    const tool::Block die{hold + b.edge_radius, 0.0, b.edge_radius, height};
    const tool::Block clamp{hold, std::min(0.5 * t, 0.25 * hold), 0.0, std::max(0.4 * hold, 4.0 * t)};
    s.job.tools = {{"punch", files::WipingPunch{punch, clearance}},
                   {"die", files::WipingDie{die}},
                   {"clamp", files::Clamp{clamp, b.clamp}}};
    files::Step step = only_step(s);
    step.clamp_on = b.clamp ? b.clamp_on : files::ClampOn::frame;
    return set_up(s, step);
}

}  // namespace overbend::job
