// The strip without its tools: the part of IncrementSolver that lets sections go.

#include <algorithm>
#include <cmath>

#include "sim/stroke/increment.h"

namespace overbend::stroke {

bool IncrementSolver::release(SolverState& c) {
    const strip::StripState& s = c.strip;
    std::vector<double> G(nodes_ - 1), k(nodes_ - 1);
    for (int e = 0; e + 1 < nodes_; ++e) {
        const material::FreeSection free =
            material::release(law_, s.layer_height.data(), s.layer_weight.data(), layers_,
                              history(c.strip, e), c.stretch[e], c.curvature[e]);
        if (!free.solved) return false;
        G[e] = free.G, k[e] = free.k;
    }
    // Walk outwards from the middle of the zone, whose place and turn stay.
    const int middle = (scene_.first_element + scene_.last_element + 1) / 2;
    u_ = c.u;
    for (int e = middle; e + 1 < nodes_; ++e) {
        u_[3 * e + 5] = u_[3 * e + 2] + length_[e] * k[e];
        const double mean = 0.5 * (u_[3 * e + 2] + u_[3 * e + 5]);
        u_[3 * e + 3] = u_[3 * e] + length_[e] * G[e] * std::cos(mean);
        u_[3 * e + 4] = u_[3 * e + 1] + length_[e] * G[e] * std::sin(mean);
    }
    for (int e = middle - 1; e >= 0; --e) {
        u_[3 * e + 2] = u_[3 * e + 5] - length_[e] * k[e];
        const double mean = 0.5 * (u_[3 * e + 2] + u_[3 * e + 5]);
        u_[3 * e] = u_[3 * e + 3] - length_[e] * G[e] * std::cos(mean);
        u_[3 * e + 1] = u_[3 * e + 4] - length_[e] * G[e] * std::sin(mean);
    }
    contacts_.groups_used = 0;
    contacts_.points.clear();
    std::fill(sections_.active.begin(), sections_.active.end(), 0.0);
    std::fill(length_scale_.moment.begin(), length_scale_.moment.end(), 0.0);
    // The energy balance ends when the tools are off: energy released from here on is not counted.
    const Audit balance = c.audit;
    start_sections(law_, c.strip, sections_);
    accept(c, 0.0, Totals{});
    c.audit = balance;
    c.punch_force = 0.0;
    c.last_ram_move = c.ram_move_before = 0.0;
    return true;
}

double IncrementSolver::free_turn(SolverState& c, double left, double right) {
    strip::StripState& s = c.strip;
    const double low = std::min(left, right), high = std::max(left, right);
    double turn = 0.0;
    for (int e = 0; e + 1 < nodes_; ++e) {
        const double a = std::min(s.blank_position[e], s.blank_position[e + 1]);
        const double b = std::max(s.blank_position[e], s.blank_position[e + 1]);
        const double inside = std::min(b, high) - std::max(a, low);
        if (inside <= 0.0) continue;
        const material::FreeSection free =
            material::release(law_, s.layer_height.data(), s.layer_weight.data(), layers_, history(s, e),
                              c.stretch[e], c.curvature[e]);
        turn += inside * (free.solved ? free.k : c.curvature[e]);
    }
    return turn;
}

}  // namespace overbend::stroke
