// The energy of an increment with its gradient and hessian: the part of IncrementSolver that sums it up.

#include <algorithm>
#include <cmath>

#include "sim/strip/beam_element.h"
#include "sim/stroke/increment.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

void IncrementSolver::add_elements(SolverState& c, Totals& totals) {
    const double shear = 5.0 / 6.0 * law_.shear_modulus * thickness_;
    strip::Vec6 gradient;
    strip::Mat6 hessian;
    for (int e = 0; e + 1 < nodes_; ++e) {
        const strip::ElementStrain& strain = strain_[e];
        const material::SectionResponse section =
            material::respond(law_, c.strip.layer_height.data(), c.strip.layer_weight.data(), layers_,
                              &starts_[static_cast<std::size_t>(e) * layers_],
                              &flow_[static_cast<std::size_t>(e) * layers_], strain.G, strain.k);
        if (section.folded) {
            totals.folded = true;
            return;
        }
        strip::element_forces(strain, section, shear, length_[e], gradient, hessian);
        totals.energy += length_[e] * (section.energy + 0.5 * shear * strain.g * strain.g);
        active_[e] = section.active;
        matrix_.join(3 * e, 3 * e + 5);
        for (int i = 0; i < 6; ++i) {
            gradient_[3 * e + i] += gradient(i);
            for (int j = 0; j < 6; ++j) matrix_.at(3 * e + i, 3 * e + j) += hessian(i, j);
        }
    }
}

void IncrementSolver::add_hold(const SolverState& c, const std::vector<double>& u, Totals& totals) {
    for (int i = 0; i < nodes_; ++i) {
        const double dx = u[3 * i] - c.u[3 * i], dy = u[3 * i + 1] - c.u[3 * i + 1];
        totals.hold += 0.5 * (hold_x_[i] * dx * dx + hold_y_[i] * dy * dy);
        gradient_[3 * i] += hold_x_[i] * dx;
        gradient_[3 * i + 1] += hold_y_[i] * dy;
        matrix_.at(3 * i, 3 * i) += hold_x_[i];
        matrix_.at(3 * i + 1, 3 * i + 1) += hold_y_[i];
    }
}

// The springs' own energy; what the strip does to them comes with the contacts.
void IncrementSolver::add_springs(const SolverState& c, const std::vector<double>& u, Totals& totals) {
    for (std::size_t i = 0; i < sprung_.size(); ++i) {
        const tool::RigidTool& t = (*scene_.tools)[sprung_[i]];
        const std::size_t at = 3 * static_cast<std::size_t>(nodes_) + i;
        const SpringForce f = spring_force(*t.spring, stops_of(t), load_fraction_of(t, c), u[at]);
        const double moved = u[at] - c.u[at], hold = limits::hold_across * law_.modulus * thickness_;
        totals.springs += f.energy;
        totals.hold += 0.5 * hold * moved * moved;
        gradient_[at] = border_.gradient[i] + f.value + hold * moved;
        border_.corner(i, i) += f.slope + hold;
    }
}

void IncrementSolver::add_weight(const SolverState& c, const std::vector<double>& u, Totals& totals) {
    if (weight_ == 0.0) return;
    for (int e = 0; e + 1 < nodes_; ++e)
        for (const int i : {e, e + 1}) {
            const double half = 0.5 * c.load_fraction * weight_ * length_[e];
            totals.weight += half * (u[3 * i + 1] - c.u[3 * i + 1]);
            gradient_[3 * i + 1] += half;
        }
}

void IncrementSolver::add_length_scale(const SolverState& c, const std::vector<double>& u, Totals& totals) {
    std::fill(length_scale_moment_.begin(), length_scale_moment_.end(), 0.0);
    for (int e = 1; e + 2 < nodes_; ++e) {
        if (length_scale_[e] == 0.0) continue;
        // Second derivative of the curvature along the strip, from the turns of four nodes.
        const double a = 1.0 / length_[e - 1], b = 1.0 / length_[e], d = 1.0 / length_[e + 1];
        const double left = 2.0 * b / (length_[e - 1] + length_[e]),
                     right = 2.0 * b / (length_[e] + length_[e + 1]);
        const double row[4] = {-left * a, left * a + (left + right) * b, -right * d - (left + right) * b,
                               right * d};
        double bend = 0.0;
        for (int m = 0; m < 4; ++m) bend += row[m] * (u[3 * (e - 1 + m) + 2] - c.u[3 * (e - 1 + m) + 2]);
        totals.length_scale += 0.5 * length_scale_[e] * bend * bend;
        matrix_.join(3 * e - 1, 3 * e + 8);
        for (int m = 0; m < 4; ++m) {
            length_scale_moment_[e - 1 + m] += length_scale_[e] * bend * row[m];
            for (int n = 0; n < 4; ++n)
                matrix_.at(3 * (e - 1 + m) + 2, 3 * (e - 1 + n) + 2) += length_scale_[e] * row[m] * row[n];
        }
    }
    for (int i = 0; i < nodes_; ++i) gradient_[3 * i + 2] += length_scale_moment_[i];
}

IncrementSolver::Totals IncrementSolver::evaluate(SolverState& c, const std::vector<double>& u,
                                                  double ram_move) {
    Totals totals;
    std::fill(gradient_.begin(), gradient_.end(), 0.0);
    matrix_.clear();
    border_.clear();
    strain_elements(u);
    add_elements(c, totals);
    if (totals.folded) return totals;
    stand_tools(u, c.u, c.travel + ram_move, ram_move);
    totals.contact = add_contacts(scene_, u, stands_, slip_scale_, contacts_, gradient_, matrix_, border_);
    if (touches_itself_)
        totals.contact.energy += add_self_contacts(scene_, u, self_contacts_, gradient_, matrix_);
    add_springs(c, u, totals);
    add_weight(c, u, totals);
    add_hold(c, u, totals);
    add_length_scale(c, u, totals);
    totals.energy += totals.contact.energy + totals.contact.friction + totals.springs + totals.weight +
                     totals.hold + totals.length_scale;
    return totals;
}

double IncrementSolver::residual_norm() const {
    double most = 0.0;
    for (int i = 0; i < nodes_; ++i) {
        most = std::max(most, std::max(std::abs(gradient_[3 * i]), std::abs(gradient_[3 * i + 1])));
        most = std::max(most, std::abs(gradient_[3 * i + 2]) / thickness_);
    }
    for (int i = 3 * nodes_; i < unknowns_; ++i) most = std::max(most, std::abs(gradient_[i]));
    return most / force_scale_;
}

}  // namespace overbend::stroke
