// Flags at places along a line, in steps so that none covers another or another's pole.
//
// Units  pixels.

#pragma once

#include <vector>

namespace overbend::picture {

struct Flag {
    double at = 0.0;     // of its pole, rising from flag to flag
    double width = 0.0;  // it lies to the right of its pole
    int step = 0;        // how high its pole is: 0 is the lowest
};

// From the right: a flag stands one step above the highest of those whose poles it would lie over.
// Returns the number of steps; gap: the least distance from a flag's end to the next pole.
int set_steps(std::vector<Flag>& flags, double gap);

}  // namespace overbend::picture
