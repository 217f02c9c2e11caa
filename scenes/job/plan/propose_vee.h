// V punches and dies for bends that no tool at hand makes: the fewest grooves and noses that serve them all.
//
// Shop rules for a groove: its opening from 6 to 12 thicknesses, and about the inside radius over
// 0.16 (common practice, seen in public texts, no standard behind it); no wider than the flanges beside the
// bend can span; its angle so sharp that the angle under load is reached with some degrees to spare. Each
// bend allows a range of openings; the fewest openings that stand in all ranges are found by stabbing them
// from the lowest upper end on, which is the least number possible.
//
// Units  mm, rad.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"

namespace overbend::job {

struct ProposedTools {
    std::vector<files::Tool> tools;
    std::vector<std::string> reasons;  // one a tool: what made it so
    std::vector<std::string> cannot;   // bends for which there is no tool, with the reason
};

// Grooves share blocks, two on each as far as they go.
ProposedTools propose_vee(const files::Case& c, const Blank& blank, const std::vector<int>& bends);

// The least number of points so that each range [low, high] holds one, as groups of ranges that share one;
// for checks. Ranges with low > high are left out.
struct OpeningRange {
    int bend = 0;
    double low = 0.0, high = 0.0, preferred = 0.0;
};
std::vector<std::vector<OpeningRange>> fewest_openings(std::vector<OpeningRange> ranges);

}  // namespace overbend::job
