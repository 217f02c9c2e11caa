// Plain blocks with one working face: pads, clamps, flat punches and dies, and the block over whose edge a
// strip is wiped.
//
// Units  mm. Throws OutOfRange, with the reason, for a shape that cannot be.

#pragma once

#include "sim/tool/arc_outline.h"

namespace overbend::tool {

// Own coordinates: the working face at y = 0, its middle at x = 0.
struct Block {
    double width = 0.0;         // > 0
    double left_radius = 0.0;   // of the working face's corners, >= 0; together at most the width
    double right_radius = 0.0;  // >= 0
    double height = 0.0;        // > either radius
};

// The working face is on top, the block is below it: a die, a pad.
ArcOutline block_facing_up(const Block& block);
// The working face is at the bottom, the block is above it: a punch, a clamp. Left stays left.
ArcOutline block_facing_down(const Block& block);

}  // namespace overbend::tool
