// A piece of the strip taken out, worked on and put back. What lies beyond its ends carries no load, so it
// goes along as a rigid body.
//
// Units  mm, rad.

#pragma once

#include <vector>

#include "sim/strip/strip_state.h"

namespace overbend::strip {

// Nodes first ... last of a strip, 0 <= first < last < nodes.
struct Piece {
    int first = 0, last = 0;
    int nodes() const { return last - first + 1; }
};

StripState take_out(const StripState& whole, const Piece& piece);

// Positions and turns of the whole strip's nodes when those of the piece are x, y, theta: the ends follow.
void carry_ends(const StripState& whole, const Piece& piece, std::vector<double>& x, std::vector<double>& y,
                std::vector<double>& theta);

// The whole strip after its piece has become `part`, ends carried along.
void put_back(StripState& whole, const Piece& piece, const StripState& part);

}  // namespace overbend::strip
