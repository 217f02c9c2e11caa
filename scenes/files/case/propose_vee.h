// V punches and dies for bends that no tool at hand makes: the fewest grooves and noses that serve them all;
// and V punches with room cut out beside the neck, for return flanges that overhang the bend.
//
// Shop rules for a groove: its opening from 6 to 12 thicknesses, and about the inside radius over
// 0.16 (common practice, seen in public texts, no standard behind it); no wider than the flanges beside the
// bend can span; its angle so sharp that the angle under load is reached with some degrees to spare. Each
// bend allows a range of openings; the fewest openings that stand in all ranges are found by stabbing them
// from the lowest upper end on, which is the least number possible.
//
// Units  mm, rad.

#pragma once

#include "scenes/files/case/work.h"

namespace overbend::files {

// Grooves share blocks, two on each as far as they go.
ProposedTools propose_vee(const Case& c, const Blank& blank, const std::vector<int>& bends);

// pairs  of neighbouring bends of like sense: the first is to be bent when the second is made, whose flange
//        then leans over it. For each V punch of the case, one that is cut out far enough for all of them, on
//        its right side: a strip is turned end for end to bring a flange there.
//
// Where the flange is at the stroke's end follows from the drawing: up along the flat between the bends, at
// half the first one's angle, and back over the second. The cut's plane face stands off its end, and its
// lower face, at 45 degrees, begins half as high as a flange turned back by a right angle would cross the
// punch's axis.
ProposedTools propose_relieved(const Case& c, const std::vector<std::pair<int, int>>& pairs);

// The least number of points so that each range [low, high] holds one, as groups of ranges that share one;
// for checks. Ranges with low > high are left out.
struct OpeningRange {
    int bend = 0;
    double low = 0.0, high = 0.0, preferred = 0.0;
};
std::vector<std::vector<OpeningRange>> fewest_openings(std::vector<OpeningRange> ranges);

}  // namespace overbend::files
