// A strip drawn between two die shoulders by a flat-faced punch, held back by a clamp on either side: each
// piece of the wall has been bent over the shoulder and straightened again.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include <optional>

#include "scenes/job/run/strip_stroke.h"
#include "sim/tool/spring.h"

namespace overbend::job {

struct DrawBend : StripOptions {
    double punch_width = 50.0;
    double corner_radius = 5.0;       // of the punch
    std::optional<double> clearance;  // between punch and wall; absent: 1.1 thicknesses
    double shoulder_radius = 5.0;     // of the die
    double flange = 100.0;            // of the strip on either side of the punch
    tool::Spring clamp{};  // of each clamp, N per mm of strip width; a rate of 0 is a constant force
    double travel = 30.0;  // to which it is to be drawn: the mesh is fine over what it draws in
};

// Its mesh is half as fine as that of a bend: much of the strip is bent, and none of it sharply.
// Throws OutOfRange for tools that cannot be or do not fit one another or the strip.
StripStroke draw_stroke(const DrawBend& bend);

// Presses it to its travel. The angles are those between straight lines fitted to the punch's face, the walls
// and the flanges, outside the bends; the walls' mean curvature is a measure, positive when they bulge
// inwards.
StripResult bend_draw(const DrawBend& bend, const stroke::StrokeOptions& options);

}  // namespace overbend::job
