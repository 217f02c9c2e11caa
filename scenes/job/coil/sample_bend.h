// One bend of 90 degrees in a V die, with each of a coil's hardening laws: what they differ where bending
// goes beyond the record.
//
// Die opening 8 thicknesses, nose and shoulders one thickness: common practice, no source. Pressed to 90
// degrees free with each law; all on as many cores as there are.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include <string>
#include <vector>

#include "sim/tensile/coil.h"

namespace overbend::job {

struct SampleBend {
    tensile::Law law = tensile::Law::swift;
    bool solved = false;
    std::string why;  // not solved
    double springback = 0.0;
    double inside_radius = 0.0;  // free
    double force = 0.0;          // greatest
    double outer_strain = 0.0;   // logarithmic, plastic and elastic, at the convex surface
};

constexpr double sample_opening = 8.0;  // thicknesses

// card: all but the law. In the order of the fits. Throws OutOfRange: a card or thickness that cannot be.
std::vector<SampleBend> bend_samples(const material::Card& card, const std::vector<tensile::LawFit>& fits,
                                     double thickness);

// The greatest less the least springback of the laws in question: those that fit about as well as the best
// one, their residual at most one and a half times its own, and the table.
struct LawSpread {
    double least = 0.0, most = 0.0;  // rad
    int laws = 0;
};
LawSpread springback_spread(const std::vector<SampleBend>& bends, const std::vector<tensile::LawFit>& fits,
                            const tensile::LawFit& chosen);

}  // namespace overbend::job
