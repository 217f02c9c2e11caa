// The hardening laws of a card as functions of free numbers, with derivatives: for fits.
//
// The free numbers are logarithms of the law's own, which stay above 0 so. Swift: K, e0, n. Hollomon: K, n,
// over the total strain as a card has it (sim/material/card.h). Voce: Y, Q, b. Linear: Y, H.
//
// Units  MPa; p without unit.

#pragma once

#include <Eigen/Core>

#include "sim/material/card.h"

namespace overbend::tensile {

enum class Law { swift, hollomon, voce, linear, swift_voce, table };
const char* law_word(Law law);  // as on the command line: "swift-voce"

struct ModelPoint {
    double stress = 0.0;
    Eigen::VectorXd slopes;  // by the free numbers
};

// law: one of the first four. free: as many as it has. modulus: for Hollomon alone.
ModelPoint model_point(Law law, const Eigen::VectorXd& free, double modulus, double p);
int free_numbers(Law law);
material::Hardening hardening_of(Law law, const Eigen::VectorXd& free);

}  // namespace overbend::tensile
