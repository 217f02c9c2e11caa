// V punches and dies for bends that no tool at hand makes: few grooves and noses that serve them all.
//
// A groove has a standard opening, of 6 to 12 thicknesses if that can be (common practice, no source): the
// nearest to the usual one over which a nose makes the drawn radius (vee_trials.h), and which the flanges
// beside the bend can span; its angle is so sharp that the angle under load is reached with some degrees to
// spare. A nose serves all bends whose radius it makes within the tolerance; it has a trade size where one
// does. Blocks are narrow: what lies beside a bend has room.
//
// Units  mm, rad.

#pragma once

#include "scenes/files/case/work.h"
#include "scenes/job/plan/vee_trials.h"
#include "scenes/job/run/drawing.h"

namespace overbend::job {

// Grooves share blocks, two on each as far as they go.
files::ProposedTools propose_vee(const files::Case& c, const Blank& blank, const std::vector<int>& bends,
                                 VeeTrials& trials);

// A groove of this opening for these bends, for noses that make their radii.
tool::VeeFace groove_over(const files::Case& c, const std::vector<int>& bends, double opening,
                          VeeTrials& trials);
// A block of one groove with so much top face beside each shoulder's arc. Usual: 3 mm or a thickness, least:
// 1 mm or a thickness, common practice, no source; `tools` checks the strength.
tool::VeeDie block_of(const tool::VeeFace& groove, double land);
double usual_land(double thickness);
double least_land(double thickness);

// Of a punch: 60 mm, or so much that the longest flat stands clear of what holds it, in steps of 20.
double punch_height(const files::Case& c);

// Standard openings, rising: common practice, no source.
const std::vector<double>& standard_openings();
double usual_shoulder(double opening);

// The least number of points so that each range [low, high] holds one, as groups of ranges that share one.
// Ranges with low > high are left out.
struct SizeRange {
    int bend = 0;
    double low = 0.0, high = 0.0;
};
std::vector<std::vector<SizeRange>> fewest_sizes(std::vector<SizeRange> ranges);

}  // namespace overbend::job
