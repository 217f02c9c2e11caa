// What the strip crosses on a picture during its stroke, for words and insets to keep clear of.
//
// Units  picture pixels.

#pragma once

#include "render/picture/view.h"

namespace overbend::picture {

struct Swept {
    std::vector<Point> strip;  // points of the mid-line in all states, no further apart than 12 px, from left
                               // to right
    double half = 0.0;         // half the strip's thickness
};

// Of the whole stroke; of one state alone; of the first.
Swept swept_by_stroke(const stroke::Recording& recording, const View& view);
Swept swept_in(const stroke::State& state, double thickness, const View& view);
Swept swept_when_placed(const stroke::Recording& recording, const View& view);

// Whether the strip comes into a box, or nearer to it than `room`.
bool crossed(const Swept& swept, const Rect& box, double room);

// The state in which the tools have gone furthest.
const stroke::State& deepest_state(const stroke::Recording& recording);

}  // namespace overbend::picture
