// How far to go along a Newton direction, as contacts have it.
//
// Newton's model takes every contact to go on with the stiffness that it has. A point that is off its tool
// has none, so the strip swings into the tool as if nothing were there, and one at the smooth start of its
// pressure hardly any. Pressure over the gap is known without solving for the strip: along the direction,
//   dE/da = slope (1 - a) + sum_i w_i c_i (p(g_i - a c_i) - p(g_i) + p'(g_i) a c_i)
// with w a point's weight, g its gap and c how far it closes on the tool in the whole direction; the second
// term is what the model leaves out. Friction, and how the tool's face turns, are left to the line search.
//
// Units  mm, N per mm width.

#pragma once

#include <vector>

#include "sim/stroke/contact.h"

namespace overbend::stroke {

// Of a set that was evaluated at u last; holds room between calls.
class ContactStep {
  public:
    // The share of the direction, above 0 and at most 1, at which dE/da is 0; 1 where it is small there.
    // slope: of the energy at u along the direction, < 0.
    double share(const ContactScene& scene, const std::vector<double>& u,
                 const std::vector<double>& direction, const ToolStands& stands, const ContactSet& set,
                 double slope);

  private:
    struct Moving {
        double weight = 0.0, closing = 0.0, gap = 0.0;
        double sliding = 0.0, slip = 0.0, held = 0.0;
        Pressure pressure;
        Traction traction;
    };
    double slope_at(const ContactLaw& law, double slope, double share) const;
    std::vector<Moving> moving_;  // points whose pressure is not straight along the direction
    std::vector<double> ahead_;   // the state at the direction's end
};

}  // namespace overbend::stroke
