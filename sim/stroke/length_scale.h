// The length-scale term of an increment's energy: it keeps hinges as wide as a real strip's.
//
// Where the moment hardly rises with the curvature, a beam bends in one element, whatever its length; a real
// strip cannot change its curvature within less than about half its thickness. Contact already spreads the
// moment that far (see contact.h). What is left, hinges between two contacts, is held by
//   1/2 sum L a (dk'')^2,  a = l^4 m / r
// on the second derivative of the curvature increment dk along the strip, where layers have yielded: m is the
// moment that those layers carry, r the curvature increment expected there (from the last increment), both
// the largest within a third of the thickness, l in proportion to the thickness. It has no rate, it spares
// elastic sections and curvatures that change slowly along the strip. l was set on the finite-element V
// strokes of tests/outside so that hinges of a perfectly plastic strip are as wide as there.
//
// Shapes  weight, length: one an element; moment: one a node.
// Units   mm, rad, N per mm of width; energy N.

#pragma once

#include <vector>

#include "sim/stroke/equations.h"
#include "sim/stroke/solver_state.h"

namespace overbend::stroke {

struct LengthScale {
    std::vector<double> weight;  // L a, N mm^4 per mm; 0 where the term is not
    std::vector<double> moment;  // of the last evaluation, N mm per mm: its part of the gradient by theta
};

// L a for an increment that starts from c. l: mm. ratio: the increment's ram move over the last one's; it
// must be above 0 for the term to be there. ram_move: mm.
std::vector<double> length_scale_weights(const SolverState& c, const std::vector<double>& length, double l,
                                         double ratio, double ram_move);

// before, u: unknowns at the increment's start and now. Returns the energy.
double add_length_scale(LengthScale& term, const std::vector<double>& length,
                        const std::vector<double>& before, const std::vector<double>& u, Equations& to);

}  // namespace overbend::stroke
