// What the scatter of a figure comes from: Sobol's indices of first order (a factor alone) and total (with
// all that it does together with others), as shares of the variance.
//
//   first = (E[(f(B) - f(A))^2] - E[(f(B) - f(AB))^2]) / (2 V)      total = E[(f(A) - f(AB))^2] / (2 V)
// AB: the sample A with the factor from B; V: variance of A and B together.
//
// Source    M. J. W. Jansen, "Analysis of variance designs for model output", Comput. Phys. Commun. 117
//           (1999) 35-43; as table 2 of A. Saltelli et al., ibid. 181 (2010) 259-270 has it; from memory.
// Intervals from points drawn again with replacement (B. Efron's bootstrap), the middle 95 per cent.

#pragma once

#include <vector>

namespace overbend::job {

// A figure at one point: A, B, then one a factor.
using PointFigures = std::vector<double>;

struct Share {
    double value = 0.0, low = 0.0, high = 0.0;
};
struct FactorImportance {
    Share first, total;
};

// One a factor. All points as long as one another, 2 at least of them; a figure that does not vary has none:
// empty.
std::vector<FactorImportance> importance(const std::vector<PointFigures>& points);

}  // namespace overbend::job
