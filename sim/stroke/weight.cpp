#include "sim/stroke/weight.h"

namespace overbend::stroke {

double add_weight(double weight, const std::vector<double>& length, const std::vector<double>& before,
                  const std::vector<double>& u, Equations& to) {
    double energy = 0.0;
    if (weight == 0.0) return energy;
    for (int e = 0; e < static_cast<int>(length.size()); ++e)
        for (const int i : {e, e + 1}) {
            const double half = 0.5 * weight * length[e];
            energy += half * (u[3 * i + 1] - before[3 * i + 1]);
            to.gradient[3 * i + 1] += half;
        }
    return energy;
}

}  // namespace overbend::stroke
