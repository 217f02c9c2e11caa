// How far the finished profile lies off the drawing.
//
// Units  mm, rad.

#pragma once

#include "scenes/case/case.h"
#include "scenes/process/drawing.h"
#include "sim/strip/strip_state.h"

namespace overbend::scenes {

// Greatest distance of the drawing's flats from the finished ones, mid-line to mid-line, both laid over one
// another for the least sum of squares. Each drawn flat's ends and middle are held against the line of the
// finished flat; the strip's ends, and the crown of a bend of more than 170 degrees, also along it. How round
// a corner came out is not in it: the inside radii tell that.
double profile_deviation(const Case& c, const Blank& blank, const strip::StripState& finished);

}  // namespace overbend::scenes
