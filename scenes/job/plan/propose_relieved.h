// V punches with room cut out beside the neck, for return flanges that overhang the bend.
//
// Units  mm, rad.

#pragma once

#include <utility>
#include <vector>

#include "scenes/job/plan/propose_vee.h"

namespace overbend::job {

// pairs  of neighbouring bends of like sense: the first is to be bent when the second is made, whose flange
//        then leans over it. For each V punch of the case, one that is cut out far enough for all of them, on
//        its right side: a strip is turned end for end to bring a flange there.
//
// Where the flange is at the stroke's end follows from the drawing: up along the flat between the bends, at
// half the first one's angle, and back over the second. The cut's plane face stands off its end, and its
// lower face, at 45 degrees, begins half as high as a flange turned back by a right angle would cross the
// punch's axis.
ProposedTools propose_relieved(const files::Case& c, const std::vector<std::pair<int, int>>& pairs);

}  // namespace overbend::job
