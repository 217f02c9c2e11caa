// An offset: both bends of an S or a Z made in one stroke between two stepped tools.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include <optional>

#include "scenes/job/run/strip_stroke.h"

namespace overbend::job {

struct OffsetBend : StripOptions {
    double offset = 5.0;               // step between the lands
    double angle = 0.785398163397448;  // of the sloped faces, rad; 45 degrees
    double corner_radius = 1.0;        // of the convex corners of both tools
    double root_radius = 0.5;          // of the concave ones
    std::optional<double> clearance;   // between the closed faces; absent: 1.05 thicknesses
    std::optional<double> land;    // of both tools beyond the sharp corners; absent: 8 thicknesses and what
                                   // the corners take
    std::optional<double> flange;  // each half's length from the middle of the slope; absent: as far as the
                                   // lands reach
};

// The left bend turns up, the right one down. Throws OutOfRange for tools that cannot be or do not fit one
// another or the strip, and for gravity: nothing holds the strip up on the left.
StripStroke offset_stroke(const OffsetBend& bend);

}  // namespace overbend::job
