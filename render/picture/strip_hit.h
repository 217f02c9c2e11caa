// Where on the strip a place of the press is: for pointers.
//
// Units  mm, press coordinates.

#pragma once

#include "render/picture/strip_shape.h"

namespace overbend::picture {

struct StripHit {
    double along = 0.0;           // element's index + part of the element
    double blank_position = 0.0;  // mm from the blank's left end
    double height = 0.0;          // over the mid-line, as it is bent
    double outside = 0.0;         // how far off the strip the place is; 0 on it
    int layer = 0;                // the nearest one, from the lower surface
};

// The cut of the strip that is nearest to a place.
StripHit nearest_on_strip(const stroke::Recording& recording, const stroke::State& state, const Place& place);

// The cut at a position of the blank, perpendicular to the mid-line, with the heights of its layers' edges.
Station station_at(const stroke::Recording& recording, const stroke::State& state, double blank_position);

}  // namespace overbend::picture
