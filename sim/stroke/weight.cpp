#include "sim/stroke/weight.h"

#include "sim/strip/beam_element.h"

namespace overbend::stroke {

double add_weight(double weight, const std::vector<double>& length, const std::vector<double>& before,
                  const std::vector<double>& u, Equations& to) {
    double energy = 0.0;
    if (weight == 0.0) return energy;
    for (int e = 0; e < static_cast<int>(length.size()); ++e)
        for (const int i : {e, e + 1}) {
            const double half = 0.5 * weight * length[e];
            energy += half * (u[strip::node_unknowns * i + 1] - before[strip::node_unknowns * i + 1]);
            to.gradient[strip::node_unknowns * i + 1] += half;
        }
    return energy;
}

}  // namespace overbend::stroke
