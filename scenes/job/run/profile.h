// What can be read off a strip's shape: angles, radii, thickness, strains of a bend.
//
// Units  mm, rad.

#pragma once

#include "sim/stroke/recording.h"

namespace overbend::job {

// The bend between two blank positions, as it is in a state.
struct BendShape {
    double angle = 0.0;          // rad as the strip lies, positive closes upwards
    double inside_radius = 0.0;  // mm, as a radius gauge reads it, see bent_strip.h; 0 when it is flat
    // Where the strip is bent most:
    double sharpest_radius = 0.0;  // mm, of the inner surface; 0 when it is flat
    double thickness = 0.0;
    double outer_strain = 0.0;  // logarithmic, at the convex surface
};

// a, b: blank positions on the flats either side of the bend. What is said of the place that is bent most are
// means over half a thickness of the strip around it: a finer figure would be the mesh's.
BendShape bend_shape(const stroke::Recording& recording, const stroke::State& state, double a, double b);

// What is read of a stroke: its state under load, and free. take: (state, whether it is the free one).
template <class Take>
void each_read_state(const stroke::Recording& recording, const Take& take) {
    for (const stroke::State& s : recording.states)
        if (s.phase == stroke::Phase::held || s.phase == stroke::Phase::free)
            take(s, s.phase == stroke::Phase::free);
}

}  // namespace overbend::job
