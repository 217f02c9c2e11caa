// How far to go along a Newton direction, as contacts have it.
//
// Newton's model takes every contact to go on with the stiffness that it has. A point that is off its tool
// has none, so the strip swings into the tool as if nothing were there; one at the smooth start of its
// pressure has hardly any; one that sticks holds, however far it is drawn. What contacts answer is known
// without solving for the strip: along the direction, as far as the energy has a slope with friction,
//   dE/da = slope (1 - a) + sum_i w_i (c_i (p_i(a) - p_i*(a)) - s_i (q_i(a) - q_i*(a)))
// with w a point's weight, c how far it closes on the tool and s how far it slides along it in the whole
// direction, p its pressure and q its traction there, and * the model's: straight on from a = 0. How a tool's
// face turns is left to the line search.
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
        double weight = 0.0;
        double closing = 0.0, sliding = 0.0;       // in the whole direction, mm
        double gap = 0.0, slip = 0.0, held = 0.0;  // at its start; held: see traction_at
        Pressure pressure;                         // there
        Traction traction;
    };
    void collect(const ContactScene& scene, const std::vector<double>& u,
                 const std::vector<double>& direction, const ToolStands& stands, const ContactSet& set);
    double slope_at(const ContactLaw& law, double slope, double share) const;
    std::vector<Moving> moving_;  // points that touch somewhere along the direction
    std::vector<double> ahead_;   // the state at the direction's end
};

}  // namespace overbend::stroke
