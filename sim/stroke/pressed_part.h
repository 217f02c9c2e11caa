// The part of a scene that its tools load, which alone is in the equations, and results put back on to the
// whole strip.

#pragma once

#include "sim/strip/piece.h"
#include "sim/stroke/stroke.h"

namespace overbend::stroke {

struct Pressed {
    StrokeScene scene;  // of the piece, with the tools that press
    strip::Piece piece;
};
Pressed pressed_part(const StrokeScene& whole);

// A result of the piece as one of the whole strip; beyond the piece's ends nothing but the place changes.
StrokeResult on_whole_strip(StrokeResult result, const StrokeScene& whole, const strip::Piece& piece,
                            const SolverOptions& options);

}  // namespace overbend::stroke
