#include <algorithm>
#include <cmath>

#include "scenes/files/case/work.h"
#include "scenes/job/run/strip_bends.h"
#include "sim/errors.h"

namespace overbend::job {

StripStroke offset_stroke(const OffsetBend& b) {
    if (b.weighs)
        throw OutOfRange("gravity", "half the strip overhangs the edge of the offset die and would fall off",
                         "leave gravity out: a hand or a gauge holds the strip");
    const double t = b.thickness, root = b.root_radius.value_or(0.5 * t), half = std::tan(0.5 * b.angle);
    const double land = b.land.value_or(8.0 * t + std::max(b.corner_radius, root) * half);
    const double slope = b.offset / std::sin(b.angle), half_run = 0.5 * b.offset / std::tan(b.angle);
    const double middle = b.flange.value_or(land + 0.5 * slope), height = 2.0 * b.offset + 10.0 * t;
    at_least("flange", middle, half_run + 2.0 * t + (b.corner_radius + root + t) * half,
             "does not reach over the corners");

    StripCase s = strip_case(b, 2.0 * middle);
    const double half_arc = files::half_core(b.corner_radius, t, b.angle) - t;
    add_bend(s, "lower bend", b.angle, middle - 0.5 * slope, half_arc);
    add_bend(s, "upper bend", -b.angle, middle + 0.5 * slope, half_arc);
    s.read_at = {0.0, middle, 2.0 * middle};
    s.job.tools = {{"punch", tool::OffsetPunch{b.offset, b.angle, b.corner_radius, root,
                                               b.clearance.value_or(1.05 * t), land, height}},
                   {"die", tool::OffsetDie{b.offset, b.angle, b.corner_radius, root, land, height}}};
    return set_up(s, only_step(s));
}

}  // namespace overbend::job
