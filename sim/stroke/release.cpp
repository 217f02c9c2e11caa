// The strip without its tools: the part of IncrementSolver that lets sections go.

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "sim/stroke/increment.h"

namespace overbend::stroke {

material::FreeSection IncrementSolver::release_section(SolverState& c, int e) {
    double slope_square[material::most_layers] = {};
    for (int i = 0; i < layers_; ++i) {
        const double slope = layer_slope(shape_, strains_, length_[e], e, i);
        slope_square[i] = slope * slope;
    }
    return material::release(law_, shape_, history(c.strip, e), strains_.sections[e], slope_square);
}

// u_ with every section at zero force and zero moment, but for what its layers' slopes, which are those of
// strains_, then change. The middle of the forming zone keeps its place and turn.
bool IncrementSolver::release_sections(SolverState& c) {
    std::vector<double> k(nodes_ - 1);
    std::vector<Eigen::Vector2d> chord(nodes_ - 1);  // along the section and across it
    for (int e = 0; e + 1 < nodes_; ++e) {
        const material::FreeSection free = release_section(c, e);
        if (!free.solved) return false;
        k[e] = free.k;
        chord[e] = length_[e] * Eigen::Vector2d(free.G, strains_.elements[e].g);
    }
    const auto turned = [&](int e, double mean) {
        return Eigen::Vector2d(Eigen::Rotation2Dd(mean) * chord[e]);
    };
    const int middle = (scene_.first_element + scene_.last_element + 1) / 2;
    for (int e = middle; e + 1 < nodes_; ++e) {
        double *a = &u_[strip::node_unknowns * e], *b = a + strip::node_unknowns;
        b[2] = a[2] + length_[e] * k[e];
        const Eigen::Vector2d d = turned(e, 0.5 * (a[2] + b[2]));
        b[0] = a[0] + d.x(), b[1] = a[1] + d.y();
    }
    for (int e = middle - 1; e >= 0; --e) {
        double *a = &u_[strip::node_unknowns * e], *b = a + strip::node_unknowns;
        a[2] = b[2] - length_[e] * k[e];
        const Eigen::Vector2d d = turned(e, 0.5 * (a[2] + b[2]));
        a[0] = b[0] - d.x(), a[1] = b[1] - d.y();
    }
    return true;
}

bool IncrementSolver::release(SolverState& c) {
    u_ = c.u;
    // The layers' slopes follow the heights, which hardly change: three times are enough.
    for (int pass = 0; pass < 3; ++pass) {
        strain_strip(shape_, length_, u_, strains_);
        if (!release_sections(c)) return false;
    }
    contacts_.groups_used = 0;
    contacts_.points.clear();
    std::fill(length_scale_.moment.begin(), length_scale_.moment.end(), 0.0);
    // The energy balance ends when the tools are off: energy released from here on is not counted.
    const Audit balance = c.audit;
    // Begun from the strains that it ends with, since the layers keep their shear.
    strain_strip(shape_, length_, u_, strains_);
    start_sections(law_, shape_, c.strip, length_, strains_, {}, sections_);
    equations_.clear();
    add_sections(law_, shape_, length_, strains_, u_, u_, sections_, equations_);
    std::fill(sections_.active.begin(), sections_.active.end(), 0.0);
    accept(c, 0.0, Totals{});
    c.audit = balance;
    c.punch_force = 0.0;
    c.last_ram_move = c.ram_move_before = 0.0;
    return true;
}

double IncrementSolver::free_turn(SolverState& c, double left, double right) {
    strip::StripState& s = c.strip;
    const double low = std::min(left, right), high = std::max(left, right);
    strain_strip(shape_, length_, c.u, strains_);
    double turn = 0.0;
    for (int e = 0; e + 1 < nodes_; ++e) {
        const double a = std::min(s.blank_position[e], s.blank_position[e + 1]);
        const double b = std::max(s.blank_position[e], s.blank_position[e + 1]);
        const double inside = std::min(b, high) - std::max(a, low);
        if (inside <= 0.0) continue;
        const material::FreeSection free = release_section(c, e);
        turn += inside * (free.solved ? free.k : c.curvature[e]);
    }
    return turn;
}

}  // namespace overbend::stroke
