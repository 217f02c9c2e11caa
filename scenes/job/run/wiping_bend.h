// A flange wiped down over the edge of a block by a punch that passes beside it, the strip held by a clamp.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include <optional>

#include "scenes/job/run/strip_stroke.h"
#include "sim/tool/spring.h"

namespace overbend::job {

enum class ClampStand { frame, ram };  // where a clamp's spring stands

struct WipingBend : StripOptions {
    double edge_radius = 2.0;           // of the die
    double corner_radius = 3.0;         // of the punch
    std::optional<double> clearance;    // between the die's wall and the punch; absent: 1.1 thicknesses
    double flange = 15.0;               // of the strip beyond the die's wall
    std::optional<double> hold;         // length of the strip under the clamp; absent: 10 thicknesses
    std::optional<tool::Spring> clamp;  // absent: the clamp is firm
    ClampStand clamp_on = ClampStand::frame;
};

// The die's wall stands at x = 0; the bend turns down. Throws OutOfRange for tools that cannot be or do not
// fit the strip.
StripStroke wiping_stroke(const WipingBend& bend);

}  // namespace overbend::job
