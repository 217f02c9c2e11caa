// The strip's own weight: energy w sum 1/2 L (dy1 + dy2) over the elements, with their nodes' moves since the
// increment's start. It is straight in the unknowns, so it has no hessian.
//
// Units  mm, N per mm of width; energy N.

#pragma once

#include <vector>

#include "sim/stroke/equations.h"

namespace overbend::stroke {

// weight: w, N per mm2 of the strip's face, downwards. length: of the elements. before, u: unknowns at the
// increment's start and now. Returns the energy.
double add_weight(double weight, const std::vector<double>& length, const std::vector<double>& before,
                  const std::vector<double>& u, Equations& to);

}  // namespace overbend::stroke
