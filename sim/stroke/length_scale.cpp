#include "sim/stroke/length_scale.h"

#include <algorithm>
#include <cmath>

#include "sim/strip/beam_element.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

namespace {

constexpr int turn_of(int node) {
    return strip::node_unknowns * node + strip::turn_unknown;
}

}  // namespace

// From the most active element within reach: one that was inactive up to now must not take all of a hinge on
// itself when it begins to flow.
std::vector<double> length_scale_weights(const SolverState& c, const std::vector<double>& length, double l,
                                         double ratio, double ram_move) {
    const int elements = static_cast<int>(length.size());
    std::vector<double> weight(elements, 0.0);
    if (!(l > 0.0) || !(ratio > 0.0)) return weight;
    const double thickness = c.strip.thickness, reach = limits::length_scale_reach * thickness;
    const double least = 1e-3 * std::abs(ram_move) / (thickness * thickness);
    for (int e = 1; e + 1 < elements; ++e) {
        double moment = 0.0, expected = least;
        const auto look = [&](int i) {
            const double last = c.last_move[turn_of(i + 1)] - c.last_move[turn_of(i)];
            moment = std::max(moment, c.active[i]);
            expected = std::max(expected, std::abs(ratio * last / length[i]));
        };
        look(e);
        double away = 0.5 * length[e];
        for (int i = e - 1; i >= 0 && away < reach; away += length[i--]) look(i);
        away = 0.5 * length[e];
        for (int i = e + 1; i < elements && away < reach; away += length[i++]) look(i);
        weight[e] = l * l * l * l * moment / expected * length[e];
    }
    return weight;
}

double add_length_scale(LengthScale& term, const std::vector<double>& length,
                        const std::vector<double>& before, const std::vector<double>& u, Equations& to) {
    const int elements = static_cast<int>(length.size());
    double energy = 0.0;
    term.moment.assign(elements + 1, 0.0);
    for (int e = 1; e + 1 < elements; ++e) {
        const double weight = term.weight[e];
        if (weight == 0.0) continue;
        // Second derivative of the curvature along the strip, from the turns of four nodes.
        const double a = 1.0 / length[e - 1], b = 1.0 / length[e], d = 1.0 / length[e + 1];
        const double left = 2.0 * b / (length[e - 1] + length[e]),
                     right = 2.0 * b / (length[e] + length[e + 1]);
        const double row[4] = {-left * a, left * a + (left + right) * b, -right * d - (left + right) * b,
                               right * d};
        double bend = 0.0;
        for (int m = 0; m < 4; ++m) bend += row[m] * (u[turn_of(e - 1 + m)] - before[turn_of(e - 1 + m)]);
        energy += 0.5 * weight * bend * bend;
        to.matrix.join(turn_of(e - 1), turn_of(e + 2));
        for (int m = 0; m < 4; ++m) {
            term.moment[e - 1 + m] += weight * bend * row[m];
            for (int n = 0; n < 4; ++n)
                to.matrix.at(turn_of(e - 1 + m), turn_of(e - 1 + n)) += weight * row[m] * row[n];
        }
    }
    for (int i = 0; i <= elements; ++i) to.gradient[turn_of(i)] += term.moment[i];
    return energy;
}

}  // namespace overbend::stroke
