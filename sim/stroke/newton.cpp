// Newton's method with a line search on the energy: the part of IncrementSolver that finds the equilibrium.

#include <algorithm>
#include <cmath>

#include "sim/strip/beam_element.h"
#include "sim/stroke/increment.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

// direction_ = - matrix^-1 gradient, as both were evaluated last; the matrix is spent. False: the strip has
// no hold in some direction.
bool IncrementSolver::solve_direction(double least_pivot) {
    for (int i = 0; i < unknowns_; ++i) direction_[i] = -equations_.gradient[i];
    if (self_contacts_.far.empty())
        return factor(equations_.matrix, least_pivot) &&
               solve_bordered(equations_.matrix, equations_.border, direction_);
    return far_factors_.factor(equations_.matrix, self_contacts_.far) &&
           solve_bordered(far_factors_, equations_.border, direction_);
}

// direction_ = - matrix^-1 gradient at u_, where the matrix was evaluated last; the matrix is spent. One with
// a pivot that is not positive (a direction in which the strip would fall) is made stiffer until the step
// goes down the energy.
bool IncrementSolver::newton_direction(const SolverState& c, double ram_move) {
    const int size = equations_.matrix.size();
    add_hessians();
    double stiff = 0.0;
    for (int i = 0; i < size; ++i) stiff = std::max(stiff, std::abs(equations_.matrix.at(i, i)));
    double shift = 0.0;
    for (int attempt = 0; attempt < 12; ++attempt) {
        if (shift > 0.0) {
            evaluate(c, u_, ram_move);
            add_hessians();
            for (int i = 0; i < size; ++i) equations_.matrix.at(i, i) += shift;
            for (int i = 0; i < equations_.border.count(); ++i) equations_.border.corner(i, i) += shift;
        }
        if (solve_direction(1e-14 * stiff) && slope_along_direction() < 0.0) return true;
        shift = shift == 0.0 ? 1e-9 * stiff : 10.0 * shift;
    }
    return false;
}

// How the energy of the last evaluation changes along the direction.
double IncrementSolver::slope_along_direction() const {
    double slope = 0.0;
    for (int i = 0; i < unknowns_; ++i) slope += direction_[i] * equations_.gradient[i];
    return slope;
}

double IncrementSolver::residual_norm() const {
    double most = 0.0;
    for (int i = 0; i < nodes_; ++i) {
        const double* g = &equations_.gradient[strip::node_unknowns * i];
        most = std::max({most, std::abs(g[0]), std::abs(g[1])});
        for (int j = strip::turn_unknown; j < strip::node_unknowns; ++j)
            most = std::max(most, std::abs(g[j]) / thickness_);
    }
    for (int i = equations_.matrix.size(); i < unknowns_; ++i)
        most = std::max(most, std::abs(equations_.gradient[i]));
    return most / force_scale_;
}

StepOutcome IncrementSolver::newton(SolverState& c, double ram_move) {
    Totals here = evaluate(c, u_, ram_move);
    if (here.folded) return StepOutcome::folded;
    for (iterations_ = 0; iterations_ < limits::iterations; ++iterations_) {
        residual_ = residual_norm();
        if (residual_ < enough_) {
            accept(c, ram_move, here);
            return StepOutcome::solved;
        }
        if (!newton_direction(c, ram_move)) return StepOutcome::no_hold;
        double turn = 0.0;
        for (int i = 0; i < nodes_; ++i)
            turn = std::max(turn, std::abs(direction_[strip::node_unknowns * i + strip::turn_unknown]));
        double step = std::min(1.0, limits::newton_turn / std::max(turn, 1e-300));

        // From here on the energy's friction is measured with the normal forces of this iterate.
        const double slope = slope_along_direction();
        here.energy -= here.contact.friction;
        here.contact.friction = lag_friction(contacts_, scene_.law);
        here.energy += here.contact.friction;

        bool found = false;
        for (int half = 0; half < 8; ++half) {
            for (int i = 0; i < unknowns_; ++i) trial_[i] = u_[i] + step * direction_[i];
            const Totals next = evaluate(c, trial_, ram_move);
            if (!next.folded) {
                const double slope_there = slope_along_direction();
                const double fall = next.energy - here.energy;
                const double noise = 1e-13 * std::abs(here.energy) + 1e-16;
                const bool down = fall <= 1e-4 * step * slope + noise && slope_there <= 0.9 * std::abs(slope);
                const bool flat = std::abs(slope_there) <= 0.5 * std::abs(slope);
                if (down || flat || residual_norm() < enough_) {
                    here = next;
                    found = true;
                    break;
                }
                // Where a parabola through value and slope here and slope there has its least.
                const double best = slope / (slope - slope_there);
                step *= slope_there > 0.0 ? std::clamp(best, 0.1, 0.6) : 0.5;
            } else {
                step *= 0.3;
            }
        }
        if (!found) return StepOutcome::not_converged;
        u_.swap(trial_);
    }
    return StepOutcome::not_converged;
}

// With this fraction of the weight and of the clamps in the frame. On success c is the new state, otherwise
// it is as before.
StepOutcome IncrementSolver::apply_loads(SolverState& c, double load_fraction) {
    const double before = c.load_fraction;
    c.load_fraction = load_fraction;
    prepare(c, 0.0, 0.0);
    u_ = c.u;
    const StepOutcome outcome = newton(c, 0.0);
    if (outcome != StepOutcome::solved) c.load_fraction = before;
    return outcome;
}

bool IncrementSolver::apply_standing_loads(SolverState& c) {
    if (!has_standing_loads()) return true;
    double step = 0.1;
    while (c.load_fraction < 1.0) {
        if (apply_loads(c, std::min(1.0, c.load_fraction + step)) == StepOutcome::solved) {
            step *= 2.0;
        } else {
            step *= 0.35;
            if (step < 1e-6) return false;
        }
    }
    begin_audit(c);
    return true;
}

StepOutcome IncrementSolver::step(SolverState& c, double ram_move) {
    // Predictor: go on along the parabola through the last three states; where that fails, from where the
    // strip is.
    const bool forward = c.last_ram_move * ram_move > 0.0;
    prepare(c, ram_move, forward ? ram_move / c.last_ram_move : c.last_ram_move != 0.0 ? 1.0 : 0.0);
    StepOutcome outcome = StepOutcome::not_converged;
    if (forward) {
        const bool curved = c.ram_move_before * ram_move > 0.0;
        for (int i = 0; i < unknowns_; ++i) {
            const double speed = c.last_move[i] / c.last_ram_move;
            u_[i] = c.u[i] + ram_move * speed;
            if (!curved) continue;
            const double gain =
                (speed - c.move_before[i] / c.ram_move_before) / (c.last_ram_move + c.ram_move_before);
            u_[i] += ram_move * (ram_move + c.last_ram_move) * gain;
        }
        outcome = newton(c, ram_move);
        if (outcome == StepOutcome::solved) return outcome;
    }
    u_ = c.u;
    return newton(c, ram_move);
}

}  // namespace overbend::stroke
