#include "sim/stroke/increment.h"

#include <algorithm>
#include <cmath>

#include "sim/strip/beam_element.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

IncrementSolver::IncrementSolver(const material::LayerLaw& law, const tool::ToolSet& tools, double friction,
                                 FormingZone zone, const strip::StripState& strip,
                                 const SolverOptions& options)
    : law_(law),
      options_(options),
      thickness_(strip.thickness),
      nodes_(strip.nodes()),
      layers_(strip.layers()) {
    force_scale_ = law.plane_strain_yield() * thickness_;
    for (int e = 0; e < strip.elements(); ++e) length_.push_back(strip.length(e));
    strain_.resize(nodes_ - 1);

    scene_.tools = &tools;
    scene_.law.stiffness = options.contact_stiffness * law.modulus / thickness_;
    scene_.law.soft = limits::contact_soft * thickness_;
    scene_.law.friction = friction;
    scene_.law.spacing = options.contact_spacing;
    scene_.thickness = thickness_;
    scene_.length = &length_;
    scene_.strain = &strain_;
    scene_.first_element = nodes_, scene_.last_element = -1;
    for (int e = 0; e < strip.elements(); ++e) {
        const double middle = 0.5 * (strip.blank_position[e] + strip.blank_position[e + 1]);
        if (middle < zone.low || middle > zone.high) continue;
        scene_.first_element = std::min(scene_.first_element, e);
        scene_.last_element = std::max(scene_.last_element, e);
    }

    // Rigid modes are held around the tools alone: a hold on flanges that swing would bend the strip.
    hold_x_.assign(nodes_, 0.0);
    hold_y_.assign(nodes_, 0.0);
    for (int e = scene_.first_element; e <= scene_.last_element; ++e)
        for (const int i : {e, e + 1}) {
            hold_x_[i] += 0.5 * length_[e] * limits::hold_along * law.modulus;
            hold_y_[i] += 0.5 * length_[e] * limits::hold_across * law.modulus;
        }
    spread_.assign(nodes_, 0.0);
    spread_moment_.assign(nodes_, 0.0);
    for (std::vector<double>* v : {&active_, &moving_, &standing_}) v->assign(nodes_ - 1, 0.0);
    starts_.resize(static_cast<std::size_t>(nodes_ - 1) * layers_);
    flow_.resize(starts_.size());
    for (std::vector<double>* v : {&u_, &trial_, &gradient_, &direction_}) v->assign(3 * nodes_, 0.0);
    matrix_.resize(3 * nodes_);
}

material::LayerHistory* IncrementSolver::history(strip::StripState& s, int e) const {
    return &s.history[static_cast<std::size_t>(e) * layers_];
}

void IncrementSolver::start(Condition& c) {
    const strip::StripState& s = c.strip;
    c.u.resize(3 * nodes_);
    for (int i = 0; i < nodes_; ++i)
        c.u[3 * i] = s.x[i], c.u[3 * i + 1] = s.y[i], c.u[3 * i + 2] = s.theta[i];
    c.stress.assign(static_cast<std::size_t>(nodes_ - 1) * layers_, 0.0);
    c.width_stress = c.stress;
    c.stretch.assign(nodes_ - 1, 1.0);
    c.curvature.assign(nodes_ - 1, 0.0);
    c.active.assign(nodes_ - 1, 0.0);
    c.spread_moment.assign(nodes_, 0.0);
    c.last_move.assign(3 * nodes_, 0.0);
    c.move_before = c.last_move;
    c.last_ram_move = c.ram_move_before = 0.0;
    c.travel = c.punch_force = 0.0;
    c.contacts.clear();
    c.audit = Audit{};
    c.audit.least = limits::least_work * force_scale_ * thickness_;
    start_layers(c);
    for (int e = 0; e + 1 < nodes_; ++e) {
        const strip::ElementStrain strain = strip::element_strain(&c.u[3 * e], length_[e]);
        const std::size_t at = static_cast<std::size_t>(e) * layers_;
        // From its own history a section answers elastically: this only fills the stresses.
        material::advance(law_, s.layer_height.data(), s.layer_weight.data(), layers_, &starts_[at],
                          &flow_[at], history(c.strip, e), &c.stress[at], &c.width_stress[at], strain.G,
                          strain.k);
        c.stretch[e] = strain.G, c.curvature[e] = strain.k;
    }
}

void IncrementSolver::strain_elements(const std::vector<double>& u) {
    for (int e = 0; e + 1 < nodes_; ++e) strain_[e] = strip::element_strain(&u[3 * e], length_[e]);
}

void IncrementSolver::start_layers(Condition& c) {
    for (std::size_t i = 0; i < starts_.size(); ++i)
        starts_[i] = material::start_of(law_, c.strip.history[i]);
    std::fill(flow_.begin(), flow_.end(), 0.0);
}

// What stays fixed during the increment: the surfaces, the points that may touch, the length-scale weights.
void IncrementSolver::prepare(Condition& c, double ram_move, double ratio) {
    start_layers(c);
    strain_elements(c.u);
    find_contacts(scene_, c.u, c.travel, 2.0 * std::abs(ram_move) + 0.15 * thickness_, contacts_);

    // Weights of the length-scale term, from the liveliest element within reach: one that has rested so far
    // must not take all of a hinge on itself when it begins to flow.
    std::fill(spread_.begin(), spread_.end(), 0.0);
    if (!(options_.length_scale > 0.0) || !(ratio > 0.0)) return;
    const double l = options_.length_scale * thickness_, reach = limits::spread_reach * thickness_;
    const double least = 1e-3 * std::abs(ram_move) / (thickness_ * thickness_);
    for (int e = 1; e + 2 < nodes_; ++e) {
        double moment = 0.0, expected = least;
        const auto look = [&](int i) {
            const double last = c.last_move[3 * i + 5] - c.last_move[3 * i + 2];
            moment = std::max(moment, c.active[i]);
            expected = std::max(expected, std::abs(ratio * last / length_[i]));
        };
        look(e);
        double away = 0.5 * length_[e];
        for (int i = e - 1; i >= 0 && away < reach; away += length_[i--]) look(i);
        away = 0.5 * length_[e];
        for (int i = e + 1; i + 1 < nodes_ && away < reach; away += length_[i++]) look(i);
        spread_[e] = l * l * l * l * moment / expected * length_[e];
    }
}

void IncrementSolver::add_elements(Condition& c, Totals& totals) {
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

void IncrementSolver::add_hold(const Condition& c, const std::vector<double>& u, Totals& totals) {
    for (int i = 0; i < nodes_; ++i) {
        const double dx = u[3 * i] - c.u[3 * i], dy = u[3 * i + 1] - c.u[3 * i + 1];
        totals.hold += 0.5 * (hold_x_[i] * dx * dx + hold_y_[i] * dy * dy);
        gradient_[3 * i] += hold_x_[i] * dx;
        gradient_[3 * i + 1] += hold_y_[i] * dy;
        matrix_.at(3 * i, 3 * i) += hold_x_[i];
        matrix_.at(3 * i + 1, 3 * i + 1) += hold_y_[i];
    }
}

void IncrementSolver::add_spread(const Condition& c, const std::vector<double>& u, Totals& totals) {
    std::fill(spread_moment_.begin(), spread_moment_.end(), 0.0);
    for (int e = 1; e + 2 < nodes_; ++e) {
        if (spread_[e] == 0.0) continue;
        // Second derivative of the curvature along the strip, from the turns of four nodes.
        const double a = 1.0 / length_[e - 1], b = 1.0 / length_[e], d = 1.0 / length_[e + 1];
        const double left = 2.0 * b / (length_[e - 1] + length_[e]),
                     right = 2.0 * b / (length_[e] + length_[e + 1]);
        const double row[4] = {-left * a, left * a + (left + right) * b, -right * d - (left + right) * b,
                               right * d};
        double bend = 0.0;
        for (int m = 0; m < 4; ++m) bend += row[m] * (u[3 * (e - 1 + m) + 2] - c.u[3 * (e - 1 + m) + 2]);
        totals.spread += 0.5 * spread_[e] * bend * bend;
        matrix_.join(3 * e - 1, 3 * e + 8);
        for (int m = 0; m < 4; ++m) {
            spread_moment_[e - 1 + m] += spread_[e] * bend * row[m];
            for (int n = 0; n < 4; ++n)
                matrix_.at(3 * (e - 1 + m) + 2, 3 * (e - 1 + n) + 2) += spread_[e] * row[m] * row[n];
        }
    }
    for (int i = 0; i < nodes_; ++i) gradient_[3 * i + 2] += spread_moment_[i];
}

IncrementSolver::Totals IncrementSolver::evaluate(Condition& c, const std::vector<double>& u,
                                                  double ram_move) {
    Totals totals;
    std::fill(gradient_.begin(), gradient_.end(), 0.0);
    matrix_.clear();
    strain_elements(u);
    add_elements(c, totals);
    if (totals.folded) return totals;
    totals.contact = add_contacts(scene_, u, c.travel + ram_move, ram_move, contacts_, gradient_, matrix_);
    add_hold(c, u, totals);
    add_spread(c, u, totals);
    totals.energy += totals.contact.energy + totals.contact.friction + totals.hold + totals.spread;
    return totals;
}

double IncrementSolver::residual_norm() const {
    double most = 0.0;
    for (int i = 0; i < nodes_; ++i) {
        most = std::max(most, std::max(std::abs(gradient_[3 * i]), std::abs(gradient_[3 * i + 1])));
        most = std::max(most, std::abs(gradient_[3 * i + 2]) / thickness_);
    }
    return most / force_scale_;
}

// Energy and history of the accepted state.
void IncrementSolver::accept(Condition& c, double ram_move, const Totals& totals) {
    double elastic = 0.0, elastic_before = 0.0, plastic = 0.0;
    const double shear = 5.0 / 6.0 * law_.shear_modulus * thickness_;
    curvature_move_ = 0.0;
    for (int e = 0; e + 1 < nodes_; ++e) {
        const strip::ElementStrain was = strip::element_strain(&c.u[3 * e], length_[e]);
        const strip::ElementStrain now = strip::element_strain(&u_[3 * e], length_[e]);
        const std::size_t at = static_cast<std::size_t>(e) * layers_;
        const double* weight = c.strip.layer_weight.data();
        elastic_before += length_[e] * (material::elastic_energy(law_, weight, layers_, history(c.strip, e),
                                                                 &c.stress[at], &c.width_stress[at]) +
                                        0.5 * shear * was.g * was.g);
        plastic += length_[e] * material::advance(law_, c.strip.layer_height.data(), weight, layers_,
                                                  &starts_[at], &flow_[at], history(c.strip, e),
                                                  &c.stress[at], &c.width_stress[at], now.G, now.k);
        elastic += length_[e] * (material::elastic_energy(law_, weight, layers_, history(c.strip, e),
                                                          &c.stress[at], &c.width_stress[at]) +
                                 0.5 * shear * now.g * now.g);
        curvature_move_ = std::max(curvature_move_, std::abs(now.k - was.k));
        c.stretch[e] = now.G, c.curvature[e] = now.k;
    }
    c.move_before.swap(c.last_move);
    for (int i = 0; i < 3 * nodes_; ++i) c.last_move[i] = u_[i] - c.u[i];
    // Work by the trapezoidal rule, but for what changes its sign where the ram turns back.
    const bool on = c.last_ram_move * ram_move > 0.0;
    double friction = 0.0;
    for (const ContactPoint& p : contacts_.points) friction += std::abs(p.friction_force * p.slip);
    const double friction_rate = ram_move != 0.0 ? friction / std::abs(ram_move) : 0.0;
    if (on) friction = 0.5 * (friction_rate + c.friction_rate) * std::abs(ram_move);
    c.friction_rate = friction_rate;
    double spread = 2.0 * totals.spread;
    if (on) {
        spread = 0.0;
        for (int i = 0; i < nodes_; ++i)
            spread += 0.5 * (c.spread_moment[i] + spread_moment_[i]) * c.last_move[3 * i + 2];
    }
    c.spread_moment = spread_moment_;

    const double force = contact_force_on_ram();
    c.audit.tools += 0.5 * (c.punch_force + force) * ram_move;
    c.audit.elastic += elastic - elastic_before;
    c.audit.plastic += plastic;
    c.audit.friction += friction;
    c.audit.contact = totals.contact.energy;
    c.audit.regularisation += 2.0 * totals.hold + spread;
    c.audit.largest = std::max(c.audit.largest, std::abs(c.audit.tools));
    c.punch_force = force;
    c.squeeze = squeeze_force();
    c.contacts = contact_patches(contacts_, 0.5 * thickness_);
    c.travel += ram_move;
    c.ram_move_before = c.last_ram_move;
    c.last_ram_move = ram_move;
    c.active = active_;
    c.u = u_;
    for (int i = 0; i < nodes_; ++i)
        c.strip.x[i] = u_[3 * i], c.strip.y[i] = u_[3 * i + 1], c.strip.theta[i] = u_[3 * i + 2];
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

double IncrementSolver::gap_at(const std::vector<double>& u, double travel, tool::Role role) {
    strain_elements(u);
    return least_gap(scene_, u, travel, role);
}

}  // namespace overbend::stroke
