// What finished angles may be off from one coil to the next, and by the mechanics itself.
//
// The press repeats its travels. The job is run again with the strongest coil, the thinnest strip and other
// friction, each at the end of its range, on a coarser mesh, since only differences count:
//   strength   of the card's grade (strength_range_percent)
//   thickness  of the strip (thickness_tolerance_mm)
//   friction   0.05 either way (friction_range), common practice, no source
//   mechanics  how near strokes of this kind came to finite elements (files::agreement); with a stroke that
//              nothing was compared with it is not known
// They are independent of one another: the whole is the root of the sum of their squares.
//
// Units  rad, either way.

#pragma once

#include <vector>

#include "scenes/job/run/process.h"

namespace overbend::job {

// The ends of what varies from coil to coil, either way of a case's own. What else speaks of coils by chance
// takes them as two standard deviations (common practice, no source).
struct Ranges {
    double thickness = 0.0;  // mm
    double strength = 0.0;   // share of the flow stress
    double friction = 0.0;   // -
};
Ranges ranges_of(const files::Case& c);
constexpr double friction_range = 0.05;
constexpr double deviations_to_end = 2.0;  // standard deviations from the middle to the end of a range

// Whether it is worked out: four more runs.
enum class Spread { left_out, worked_out };

// One a bend, in turn. Empty: the part is not finished, or one of these runs was not solved.
std::vector<AngleSpread> angle_spread(const files::Case& c, const JobResult& job);

}  // namespace overbend::job
