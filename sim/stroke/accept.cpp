// Taking an increment's equilibrium over as the strip's state: history, balance of work, forces on the tools.

#include <algorithm>
#include <cmath>

#include "sim/strip/beam_element.h"
#include "sim/stroke/increment.h"

namespace overbend::stroke {

// Energy and history of the accepted state.
void IncrementSolver::accept(SolverState& c, double ram_move, const Totals& totals) {
    double elastic = 0.0, plastic = 0.0;
    curvature_move_ = 0.0;
    for (int e = 0; e + 1 < nodes_; ++e) {
        const strip::ElementStrain& now = strains_.elements[e];
        const std::size_t at = static_cast<std::size_t>(e) * layers_;
        material::LayerHistory* layers = history(c.strip, e);
        double *stress = &c.stress[at], *width_stress = &c.width_stress[at];
        plastic += length_[e] *
                   advance_layers(law_, shape_, e, sections_, layers, stress, width_stress, &c.flow[at]);
        elastic += length_[e] * material::elastic_energy(law_, shape_, layers, stress, width_stress);
        curvature_move_ = std::max(curvature_move_, std::abs(now.k - c.curvature[e]));
        c.stretch[e] = now.G, c.curvature[e] = now.k;
    }
    c.move_before.swap(c.last_move);
    for (int i = 0; i < unknowns_; ++i) c.last_move[i] = u_[i] - c.u[i];
    // Work by the trapezoidal rule, but for what changes its sign where the ram turns back.
    const bool on = c.last_ram_move * ram_move > 0.0;
    double friction = 0.0;
    slip_ = 0.0;
    for (const ContactPoint& p : contacts_.points)
        if (p.normal_force > 0.0) slip_ = std::max(slip_, std::abs(p.slip));
    // What slides is lost, and what a point that is off the tool had stored; what a held point gives way is
    // not.
    const double stick = scene_.law.stick;
    for (const ContactPoint& p : contacts_.points)
        friction += p.weight * (p.traction == 0.0 ? 0.5 * p.held * p.held / stick
                                                  : -p.traction * (p.slip + (p.traction - p.held) / stick));
    c.held = held_groups(contacts_);
    const double friction_rate = ram_move != 0.0 ? friction / std::abs(ram_move) : 0.0;
    // The trapezoid takes the rate to change evenly: not so when the strip has slid in one of the two alone.
    const bool even = friction_rate < 2.0 * c.friction_rate && c.friction_rate < 2.0 * friction_rate;
    if (on && even) friction = 0.5 * (friction_rate + c.friction_rate) * std::abs(ram_move);
    c.friction_rate = friction_rate;
    double length_scale = 2.0 * totals.length_scale;
    if (on) {
        length_scale = 0.0;
        for (int i = 0; i < nodes_; ++i)
            length_scale += 0.5 * (c.length_scale_moment[i] + length_scale_.moment[i]) *
                            c.last_move[strip::node_unknowns * i + strip::turn_unknown];
    }
    c.length_scale_moment = length_scale_.moment;

    const double force = contact_force_on_ram();
    c.audit.tools += 0.5 * (c.punch_force + force) * ram_move;
    c.audit.elastic += elastic - c.elastic_energy;
    c.elastic_energy = elastic;
    c.audit.plastic += plastic;
    c.audit.friction += friction;
    c.contact_energy = totals.contact.energy + held_energy(contacts_, scene_.law);
    c.spring_energy = totals.springs;
    c.audit.contact = c.contact_energy - c.audit.contact_start;
    c.audit.springs = c.spring_energy - c.audit.springs_start;
    c.audit.weight -= totals.weight;
    c.audit.regularisation += 2.0 * (totals.hold + totals.along) + length_scale;
    c.audit.largest = std::max(c.audit.largest, std::abs(c.audit.tools));
    c.punch_force = force;
    c.squeeze = squeeze_force();
    c.contacts = contact_patches(contacts_, 0.5 * thickness_);
    c.travel += ram_move;
    c.ram_move_before = c.last_ram_move;
    c.last_ram_move = ram_move;
    c.active = sections_.active;
    c.u = u_;
    for (std::size_t i = 0; i < sprung_.size(); ++i)
        c.compression[sprung_[i]] = u_[strip::node_unknowns * nodes_ + i];
    for (int i = 0; i < nodes_; ++i) {
        const double* of_node = &u_[strip::node_unknowns * i];
        c.strip.x[i] = of_node[0], c.strip.y[i] = of_node[1], c.strip.theta[i] = of_node[2];
        for (int j = 0; j < material::warps; ++j)
            c.strip.warp[material::warps * i + j] = of_node[strip::warp_unknown + j];
    }
    ++c.increments;
    c.iterations += iterations_;
}

double IncrementSolver::contact_force_on_ram() const {
    double force = 0.0;
    for (int k = 0; k < contacts_.groups_used; ++k) {
        const ContactGroup& g = contacts_.groups[k];
        if (!(*scene_.tools)[g.tool].moves_with_ram()) continue;
        for (int i = g.first; i < g.first + g.count; ++i) force -= contacts_.points[i].force.y();
    }
    return force;
}

// The greatest force with which moving tools and standing ones press the same one and a half thicknesses of
// the strip from both sides, N per mm.
double IncrementSolver::squeeze_force() {
    std::fill(moving_.begin(), moving_.end(), 0.0);
    std::fill(standing_.begin(), standing_.end(), 0.0);
    bool any[2] = {false, false};
    for (int k = 0; k < contacts_.groups_used; ++k) {
        const ContactGroup& g = contacts_.groups[k];
        const bool with_ram = (*scene_.tools)[g.tool].moves_with_ram();
        for (int i = g.first; i < g.first + g.count; ++i) {
            const double force = contacts_.points[i].normal_force;
            (with_ram ? moving_ : standing_)[g.element] += force;
            any[with_ram] = any[with_ram] || force > 0.0;
        }
    }
    double most = 0.0;
    if (!any[0] || !any[1]) return most;
    for (int first = 0; first + 1 < nodes_; ++first) {
        double above = 0.0, below = 0.0, run = 0.0;
        for (int e = first; e + 1 < nodes_ && run < 1.5 * thickness_; run += length_[e++])
            above += moving_[e], below += standing_[e];
        most = std::max(most, std::min(above, below));
    }
    return most;
}

}  // namespace overbend::stroke
