// What the tools of a step are, where they stand, and how they take the strip.
//
// Units  mm, rad.

#pragma once

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"
#include "sim/tool/tool_set.h"

namespace overbend::job {

// How a step's tools take the strip. Left and right as it lies in the press.
struct Hold {
    double reach_left = 0.0;   // how far from the left bend line they may press it
    double reach_right = 0.0;  // and from the right one
    double level_at = 0.0;     // blank position about which it lies level before the stroke,
    double half_span = 0.0;    // so far to either side,
    double at_x = 0.0;         // and where that position lies, from the punch's axis
    double depth = 1e300;      // how deep the punch's lowest point may go below the die's top face
    double sense = 1.0;        // of the step's (left) bend: +1 turns up, -1 down
};
Hold hold_of(const files::Case& c, const Blank& blank, const files::Step& step);

// Punch first, then the die, the pad, the clamp; heights are left to stroke::place.
tool::ToolSet tools_of(const files::Case& c, const files::Step& step);

}  // namespace overbend::job
