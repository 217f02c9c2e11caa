// The strip away from the forming zone, cut into convex pieces: long where it is straight, short where it is
// bent.
//
// Units  mm.

#pragma once

#include <vector>

#include "sim/clearance/solid.h"
#include "sim/stroke/recording.h"
#include "sim/stroke/stroke_scene.h"

namespace overbend::clearance {

// A stretch of the blank, from its end that lies left to the one that lies right.
struct Span {
    double left = 0.0, right = 0.0;  // blank positions
};

// Spans that are as good as straight in all of these states: the strip turns by no more than 7 degrees in
// each, so that its surface bulges out of the piece by no more than 0.2 per cent of its radius.
std::vector<Span> spans_outside(const stroke::Recording& recording, const std::vector<int>& states,
                                const stroke::FormingZone& zone);

// The span as it lies in a state, as thick as the blank.
Convex piece_of(const stroke::Recording& recording, int state, const Span& span);

// Blank position of the place of a piece that is nearest to a point.
double blank_position_of(const Span& span, const Convex& piece, const Vec2& at);

}  // namespace overbend::clearance
