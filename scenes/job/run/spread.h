// What finished angles may be off from one coil to the next, and by the mechanics itself.
//
// The press repeats its travels. The job is run again with the strongest coil, the thinnest strip and other
// friction, each at the end of its range, on a coarser mesh, since only differences count:
//   strength   of the card's grade (strength_range_percent)
//   thickness  of the strip (thickness_tolerance_mm)
//   friction   0.05 either way, common practice, no source
//   mechanics  how near strokes of this kind came to finite elements (files::agreement); with a stroke that
//              nothing was compared with it is not known
// They are independent of one another: the whole is the root of the sum of their squares.
//
// Units  rad, either way.

#pragma once

#include <vector>

#include "scenes/job/run/process.h"

namespace overbend::job {

// Whether it is worked out: four more runs.
enum class Spread { left_out, worked_out };

// One a bend, in turn. Empty: the part is not finished, or one of these runs was not solved.
std::vector<AngleSpread> angle_spread(const files::Case& c, const JobResult& job);

}  // namespace overbend::job
