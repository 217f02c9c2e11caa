// True stress over logarithmic plastic strain, up to the greatest load: what a hardening law is fitted to.
//
//   s = S (1 + e),   p = ln(1 + e) - s / E
//
// Both hold while the specimen is strained evenly: from the end of yield to the greatest load. Points close
// together are gathered to means, so that the early part of a dense record does not outweigh the rest.
//
// Units  MPa; p without unit.

#pragma once

#include <vector>

#include "sim/tensile/figures.h"

namespace overbend::tensile {

struct TrueCurve {
    std::vector<double> p, stress;  // rising in p
    double from = 0.0, to = 0.0;    // ends in p
};

constexpr double first_fitted = 0.002;  // plastic strain, where there is no yield point
constexpr int most_gathered = 150;

// specimen: see specimen_record, of this modulus. Throws BadRecord: fewer than eight points.
TrueCurve true_curve(const Record& specimen, double modulus, const Figures& figures);

}  // namespace overbend::tensile
