// Laying the strip on the die and bringing the punch down to it.
//
// Units  mm, rad.

#pragma once

#include "sim/stroke/stroke.h"

namespace overbend::stroke {

// Levels the strip about the blank position (chord over half_span either side), with that position at x =
// at_x, and lowers it until its forming zone lies the initial gap above the die; then sets the punch as far
// above the strip. Initial gap: the smooth start of the contact, a thousandth of the thickness; placing in
// the contact, not above it, makes the first increment jump. Then every pad is raised and every clamp lowered
// to the same gap.
//
// scene.strip must have its face and end turned already. Other tools stay where they are.
void place(StrokeScene& scene, double blank_position, double half_span, double at_x);

}  // namespace overbend::stroke
