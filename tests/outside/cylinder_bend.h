// A strip bent freely by a cylinder into an open cylindrical cavity that is wider than the cylinder.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include "scenes/job/run/strip_stroke.h"

namespace overbend::tests {

struct CylinderBend : job::StripOptions {
    double punch_radius = 23.5;
    double cavity_radius = 25.0;
    double shoulder_radius = 4.0;  // between the die's top face and the cavity's wall, which is upright there
    double flange = 60.0;          // each half's length
};

// Throws OutOfRange for tools that cannot be or do not fit one another or the strip.
job::StripStroke cylinder_stroke(const CylinderBend& bend);

}  // namespace overbend::tests
