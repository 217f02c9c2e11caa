#include "sim/stroke/increment.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "sim/strip/beam_element.h"
#include "sim/stroke/weight.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

namespace {

// A clamp whose spring stands in the press's frame, or whose force does: it is closed before the stroke.
bool stands_in_frame(const tool::RigidTool& t) {
    return t.role == tool::Role::clamp && t.spring && !t.clamp_on_ram;
}

}  // namespace

std::vector<double> unknowns_of(const strip::StripState& s) {
    std::vector<double> u;
    for (int i = 0; i < s.nodes(); ++i) {
        u.insert(u.end(), {s.x[i], s.y[i], s.theta[i]});
        u.insert(u.end(), s.warp.begin() + material::warps * i, s.warp.begin() + material::warps * (i + 1));
    }
    return u;
}

IncrementSolver::IncrementSolver(const StrokeScene& scene, const SolverOptions& options)
    : law_(scene.law),
      shape_({scene.strip.layer_height, scene.strip.layer_weight}),
      options_(options),
      thickness_(scene.strip.thickness),
      nodes_(scene.strip.nodes()),
      layers_(scene.strip.layers()),
      weight_(scene.weight),
      touches_itself_(scene.touches_itself) {
    const strip::StripState& strip = scene.strip;
    force_scale_ = law_.plane_strain_yield() * thickness_;
    // A strip's own weight is small beside what bends it: it must not be lost in the residual.
    enough_ = limits::residual;
    if (weight_ > 0.0)
        enough_ = std::clamp(limits::weight_residual * weight_ * thickness_ / force_scale_, 1e-9, enough_);
    for (int e = 0; e < strip.elements(); ++e) length_.push_back(strip.length(e));

    scene_.tools = &scene.tools;
    scene_.law.stiffness = options.contact_stiffness * law_.modulus / thickness_;
    scene_.law.soft = limits::contact_soft * thickness_;
    scene_.law.friction = scene.friction;
    scene_.law.stick = 2.0 * law_.shear_modulus / thickness_;
    scene_.law.spacing = options.contact_spacing;
    scene_.thickness = thickness_;
    scene_.length = &length_;
    scene_.shape = &shape_;
    scene_.strains = &strains_;
    scene_.first_element = nodes_, scene_.last_element = -1;
    for (int e = 0; e < strip.elements(); ++e) {
        const double middle = 0.5 * (strip.blank_position[e] + strip.blank_position[e + 1]);
        if (middle < scene.zone.low || middle > scene.zone.high) continue;
        scene_.first_element = std::min(scene_.first_element, e);
        scene_.last_element = std::max(scene_.last_element, e);
    }

    length_scale_.moment.assign(nodes_, 0.0);
    for (std::vector<double>* v : {&sections_.active, &moving_, &standing_}) v->assign(nodes_ - 1, 0.0);

    stands_.resize(scene.tools.size());
    for (std::size_t k = 0; k < scene.tools.size(); ++k) {
        const tool::RigidTool& t = scene.tools[k];
        if (!t.spring) continue;
        stands_[k].spring = static_cast<int>(sprung_.size());
        stands_[k].gives = Vec2(0.0, t.gives_way());
        sprung_.push_back(static_cast<int>(k));
    }
    unknowns_ = strip::node_unknowns * nodes_ + static_cast<int>(sprung_.size());
    for (std::vector<double>* v : {&u_, &trial_, &direction_}) v->assign(unknowns_, 0.0);
    equations_.resize(nodes_, static_cast<int>(sprung_.size()));
}

material::LayerHistory* IncrementSolver::history(strip::StripState& s, int e) const {
    return &s.history[static_cast<std::size_t>(e) * layers_];
}

void IncrementSolver::start(SolverState& c) {
    c.u = unknowns_of(c.strip);
    c.u.resize(unknowns_, 0.0);
    c.stress.assign(static_cast<std::size_t>(nodes_ - 1) * layers_, 0.0);
    c.width_stress = c.stress;
    c.flow = c.stress;
    c.stretch.assign(nodes_ - 1, 1.0);
    c.curvature.assign(nodes_ - 1, 0.0);
    c.active.assign(nodes_ - 1, 0.0);
    c.length_scale_moment.assign(nodes_, 0.0);
    c.last_move.assign(unknowns_, 0.0);
    c.move_before = c.last_move;
    c.last_ram_move = c.ram_move_before = 0.0;
    c.travel = c.punch_force = 0.0;
    c.contacts.clear();
    c.held.clear();
    strain_strip(shape_, length_, c.u, strains_);
    start_sections(law_, shape_, c.strip, length_, strains_, {}, sections_);
    // From its own history a section answers elastically: this only fills the stresses.
    equations_.clear();
    add_sections(law_, shape_, length_, strains_, c.u, c.u, sections_, equations_);
    c.elastic_energy = 0.0;
    for (int e = 0; e + 1 < nodes_; ++e) {
        const strip::ElementStrain& strain = strains_.elements[e];
        const std::size_t at = static_cast<std::size_t>(e) * layers_;
        advance_layers(law_, shape_, e, sections_, history(c.strip, e), &c.stress[at], &c.width_stress[at],
                       &c.flow[at]);
        c.elastic_energy += length_[e] * material::elastic_energy(law_, shape_, history(c.strip, e),
                                                                  &c.stress[at], &c.width_stress[at]);
        c.stretch[e] = strain.G, c.curvature[e] = strain.k;
    }
    c.load_fraction = has_standing_loads() ? 0.0 : 1.0;
    c.contact_energy = 0.0;
    start_springs(c);
    begin_audit(c);
}

// Pads and clamps on the ram lie against their stops. Clamps in the frame stand on the strip, without a force
// as yet.
void IncrementSolver::start_springs(SolverState& c) {
    c.compression.assign(stands_.size(), 0.0);
    c.spring_energy = 0.0;
    strain_strip(shape_, length_, c.u, strains_);
    for (std::size_t i = 0; i < sprung_.size(); ++i) {
        const int k = sprung_[i];
        const tool::RigidTool& t = (*scene_.tools)[k];
        double& z = c.u[strip::node_unknowns * nodes_ + i];
        if (stands_in_frame(t)) {
            for (int round = 0; round < 20; ++round) {
                stand_tools(c.u, c.u, 0.0, 0.0);
                const double gap = least_gap(scene_, c.u, stands_[k], k);
                if (std::abs(gap) > 1e3 * thickness_ || std::abs(gap) < 0.1 * scene_.law.soft) break;
                z -= gap;
            }
        } else {
            z = rest_compression(*t.spring, stops_of(t));
        }
        c.compression[k] = z;
        const SpringUnknown s = spring_unknown(k, c);
        c.spring_energy += spring_force(*s.spring, s.stops, s.load_fraction, z).energy;
    }
}

void IncrementSolver::begin_audit(SolverState& c) const {
    c.audit = Audit{};
    c.audit.least = limits::least_work * force_scale_ * thickness_;
    c.audit.contact_start = c.contact_energy;
    c.audit.springs_start = c.spring_energy;
}

bool IncrementSolver::has_standing_loads() const {
    bool any = weight_ > 0.0;
    for (const int k : sprung_) any = any || stands_in_frame((*scene_.tools)[k]);
    return any;
}

// A clamp in the frame follows the strip down by half its thickness.
SpringStops IncrementSolver::stops_of(const tool::RigidTool& t) const {
    const double stiffness = limits::spring_stop * law_.modulus;
    return {stands_in_frame(t) ? -0.5 * thickness_ : 0.0, stiffness, scene_.law.soft};
}

SpringUnknown IncrementSolver::spring_unknown(int tool, const SolverState& c) const {
    const tool::RigidTool& t = (*scene_.tools)[tool];
    return {&*t.spring, stops_of(t), stands_in_frame(t) ? c.load_fraction : 1.0};
}

std::vector<SpringUnknown> IncrementSolver::spring_unknowns(const SolverState& c) const {
    std::vector<SpringUnknown> springs;
    for (const int k : sprung_) springs.push_back(spring_unknown(k, c));
    return springs;
}

// Where the tools are with the springs at u, and how far they have moved since `before`.
void IncrementSolver::stand_tools(const std::vector<double>& u, const std::vector<double>& before,
                                  double travel, double ram_move) {
    for (std::size_t k = 0; k < stands_.size(); ++k) {
        const tool::RigidTool& t = (*scene_.tools)[k];
        ToolStand& s = stands_[k];
        const double z = s.spring < 0 ? 0.0 : u[strip::node_unknowns * nodes_ + s.spring];
        const double was = s.spring < 0 ? 0.0 : before[strip::node_unknowns * nodes_ + s.spring];
        s.at = tool_position(t, travel, z);
        s.moved = Vec2(0.0, t.moves_with_ram() ? -ram_move : 0.0) + (z - was) * s.gives;
    }
}

// What stays fixed during the increment: the surfaces, the points that may touch, the length-scale weights.
void IncrementSolver::prepare(SolverState& c, double ram_move, double ratio) {
    strain_strip(shape_, length_, c.u, strains_);
    std::vector<double> flow = c.flow;
    for (double& of_layer : flow) of_layer *= std::max(0.0, ratio);
    start_sections(law_, shape_, c.strip, length_, strains_, flow, sections_);
    stand_tools(c.u, c.u, c.travel, 0.0);
    find_contacts(scene_, c.u, stands_, 2.0 * std::abs(ram_move) + 0.15 * thickness_, c.held, contacts_);
    hold_ = hold_rigid_modes(scene_, contacts_, law_.modulus);
    if (touches_itself_)
        find_self_contacts(scene_, c.u, 2.0 * std::abs(ram_move) + 0.3 * thickness_, self_contacts_);
    length_scale_.weight =
        length_scale_weights(c, length_, options_.length_scale * thickness_, ratio, ram_move);
}

// The energy at u with its gradient: the sum of the terms, always in this order. The hessian is complete once
// add_hessians has been called.
IncrementSolver::Totals IncrementSolver::evaluate(const SolverState& c, const std::vector<double>& u,
                                                  double ram_move) {
    Totals totals;
    equations_.clear();
    strain_strip(shape_, length_, u, strains_);
    const std::optional<SectionsSum> sections =
        add_sections(law_, shape_, length_, strains_, c.u, u, sections_, equations_);
    totals.folded = !sections;
    if (totals.folded) return totals;
    stand_tools(u, c.u, c.travel + ram_move, ram_move);
    totals.contact = add_contacts(scene_, u, stands_, contacts_, equations_);
    if (touches_itself_) totals.contact.energy += add_self_contacts(scene_, u, self_contacts_, equations_);
    const double hold = limits::hold_across * law_.modulus;
    const SpringSum springs = add_springs(spring_unknowns(c), hold, c.u, u, equations_);
    totals.springs = springs.stored;
    totals.weight = add_weight(c.load_fraction * weight_, length_, c.u, u, equations_);
    totals.hold = springs.hold + add_hold(hold_, c.u, u, equations_);
    totals.length_scale = add_length_scale(length_scale_, length_, c.u, u, equations_);
    equations_.take_over_gradient(strains_, length_);
    totals.along = sections->along;
    totals.energy = sections->energy + totals.along +
                    (totals.contact.energy + totals.contact.friction + totals.springs + totals.weight +
                     totals.hold + totals.length_scale);
    return totals;
}

void IncrementSolver::add_hessians() {
    add_section_hessians(shape_, length_, strains_, sections_, equations_);
    equations_.take_over_hessian(strains_, length_);
}

double IncrementSolver::gap_at(const std::vector<double>& u, tool::Role role) {
    std::vector<double> all = u;
    all.resize(unknowns_, 0.0);
    strain_strip(shape_, length_, all, strains_);
    stand_tools(all, all, 0.0, 0.0);
    double least = 1e300;
    for (std::size_t k = 0; k < stands_.size(); ++k)
        if ((*scene_.tools)[k].role == role)
            least = std::min(least, least_gap(scene_, all, stands_[k], static_cast<int>(k)));
    return least;
}

}  // namespace overbend::stroke
