// Bends that several checks look at, and short names for them.
//
// Units  mm, MPa, N per mm of width, degrees.

#pragma once

#include <string>
#include <vector>

#include "scenes/job/run/strip_bends.h"
#include "sim/material/card.h"
#include "sim/material/pure_bending.h"

namespace overbend::tests {

// Elastic, perfectly plastic.
material::Card perfectly_plastic_card(double youngs_modulus, double poisson, double yield);

// A strip bent by a moment alone to an inside radius (of a strip that keeps its thickness) or to a curvature.
material::BendingPoint bend_round(const material::Card& card, double inside_radius, double thickness,
                                  double hold = 1.0);
material::BendingPoint bend_to_curvature(const material::Card& card, double curvature, double thickness,
                                         double hold = 1.0);

// Distance of the layer whose length counts from the inside, over the thickness, in pure bending: the blank's
// length of a bend is its angle times inside radius plus this share of the thickness.
double k_factor_of(const material::BendingPoint& bent, double thickness);

// A V bend of a strip 1 mm thick over an open die until it is free at 90 degrees; the shoulders' radius is
// the thickness, the friction 0.1. Each is worked out once.
const job::VeeResult& vee_to_90(const std::string& card, double nose_radius, double die_opening);
// Several of them, on all cores.
struct VeeSubject {
    std::string card;
    double nose_radius = 1.0, die_opening = 8.0;
};
void work_out(const std::vector<VeeSubject>& subjects);

double springback_degrees(const job::VeeResult& result);

// Greatest engineering stress of a card's flow curve, where d sigma / d eps = sigma.
double tensile_strength_of_curve(const material::Card& card);

}  // namespace overbend::tests
