// Random parts that a shop would call ordinary, drawn without tools: to measure how many the planner plans.
//
// Drawn   strip of 0.5 to 3 mm (even on a logarithmic scale), eleven cards; 30 to 135 degrees; one or two
//         radii a part, 0.8 to 4 thicknesses and not below the table of least radii; flats from the least
//         flange (0.7 of 6 thicknesses, outside) to 60 mm. Some neighbours are an offset (equal, 30 to 60
//         degrees, a step of 2 to 5 thicknesses), some a channel (90 degrees both, 8 to 40 mm wide inside).
//         No part comes nearer to itself than half a thickness.
//
// Units  mm, rad.

#pragma once

#include <cstdint>

#include "scenes/files/case/case.h"

namespace overbend::tests {

// bends: 1 to 8. The same for the same seed.
files::Case ordinary_part(std::uint64_t seed, int bends);

}  // namespace overbend::tests
