#include "sim/stroke/increment.h"

#include <algorithm>
#include <cmath>

#include "sim/strip/beam_element.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

namespace {

// A clamp whose spring stands in the press's frame, or whose force does: it is closed before the stroke.
bool stands_in_frame(const tool::RigidTool& t) {
    return t.role == tool::Role::clamp && t.spring && !t.clamp_on_ram;
}

}  // namespace

IncrementSolver::IncrementSolver(const StrokeScene& scene, const SolverOptions& options)
    : law_(scene.law),
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
    strain_.resize(nodes_ - 1);

    scene_.tools = &scene.tools;
    scene_.law.stiffness = options.contact_stiffness * law_.modulus / thickness_;
    scene_.law.soft = limits::contact_soft * thickness_;
    scene_.law.friction = scene.friction;
    scene_.law.spacing = options.contact_spacing;
    scene_.thickness = thickness_;
    scene_.length = &length_;
    scene_.strain = &strain_;
    scene_.first_element = nodes_, scene_.last_element = -1;
    for (int e = 0; e < strip.elements(); ++e) {
        const double middle = 0.5 * (strip.blank_position[e] + strip.blank_position[e + 1]);
        if (middle < scene.zone.low || middle > scene.zone.high) continue;
        scene_.first_element = std::min(scene_.first_element, e);
        scene_.last_element = std::max(scene_.last_element, e);
    }

    hold_x_.assign(nodes_, 0.0);
    hold_y_.assign(nodes_, 0.0);
    length_scale_.assign(nodes_, 0.0);
    length_scale_moment_.assign(nodes_, 0.0);
    for (std::vector<double>* v : {&active_, &moving_, &standing_}) v->assign(nodes_ - 1, 0.0);
    starts_.resize(static_cast<std::size_t>(nodes_ - 1) * layers_);
    flow_.resize(starts_.size());

    stands_.resize(scene.tools.size());
    for (std::size_t k = 0; k < scene.tools.size(); ++k) {
        const tool::RigidTool& t = scene.tools[k];
        if (!t.spring) continue;
        stands_[k].spring = static_cast<int>(sprung_.size());
        stands_[k].gives = Vec2(0.0, t.gives_way());
        sprung_.push_back(static_cast<int>(k));
    }
    unknowns_ = 3 * nodes_ + static_cast<int>(sprung_.size());
    for (std::vector<double>* v : {&u_, &trial_, &gradient_, &direction_}) v->assign(unknowns_, 0.0);
    matrix_.resize(3 * nodes_);
    border_.resize(static_cast<int>(sprung_.size()), 3 * nodes_);
}

material::LayerHistory* IncrementSolver::history(strip::StripState& s, int e) const {
    return &s.history[static_cast<std::size_t>(e) * layers_];
}

void IncrementSolver::start(SolverState& c) {
    const strip::StripState& s = c.strip;
    c.u.assign(unknowns_, 0.0);
    for (int i = 0; i < nodes_; ++i)
        c.u[3 * i] = s.x[i], c.u[3 * i + 1] = s.y[i], c.u[3 * i + 2] = s.theta[i];
    c.stress.assign(static_cast<std::size_t>(nodes_ - 1) * layers_, 0.0);
    c.width_stress = c.stress;
    c.stretch.assign(nodes_ - 1, 1.0);
    c.curvature.assign(nodes_ - 1, 0.0);
    c.active.assign(nodes_ - 1, 0.0);
    c.length_scale_moment.assign(nodes_, 0.0);
    c.last_move.assign(unknowns_, 0.0);
    c.move_before = c.last_move;
    c.last_ram_move = c.ram_move_before = 0.0;
    c.travel = c.punch_force = 0.0;
    c.contacts.clear();
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
    strain_elements(c.u);
    for (std::size_t i = 0; i < sprung_.size(); ++i) {
        const int k = sprung_[i];
        const tool::RigidTool& t = (*scene_.tools)[k];
        double& z = c.u[3 * nodes_ + i];
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
        c.spring_energy += spring_force(*t.spring, stops_of(t), load_fraction_of(t, c), z).energy;
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

double IncrementSolver::load_fraction_of(const tool::RigidTool& t, const SolverState& c) const {
    return stands_in_frame(t) ? c.load_fraction : 1.0;
}

// Where the tools are with the springs at u, and how far they have moved since `before`.
void IncrementSolver::stand_tools(const std::vector<double>& u, const std::vector<double>& before,
                                  double travel, double ram_move) {
    for (std::size_t k = 0; k < stands_.size(); ++k) {
        const tool::RigidTool& t = (*scene_.tools)[k];
        ToolStand& s = stands_[k];
        const double z = s.spring < 0 ? 0.0 : u[3 * nodes_ + s.spring];
        const double was = s.spring < 0 ? 0.0 : before[3 * nodes_ + s.spring];
        s.at = tool_position(t, travel, z);
        s.moved = Vec2(0.0, t.moves_with_ram() ? -ram_move : 0.0) + (z - was) * s.gives;
    }
}

void IncrementSolver::strain_elements(const std::vector<double>& u) {
    for (int e = 0; e + 1 < nodes_; ++e) strain_[e] = strip::element_strain(&u[3 * e], length_[e]);
}

void IncrementSolver::start_layers(SolverState& c) {
    for (std::size_t i = 0; i < starts_.size(); ++i)
        starts_[i] = material::start_of(law_, c.strip.history[i]);
    std::fill(flow_.begin(), flow_.end(), 0.0);
}

// Rigid modes are held where tools touch, or may touch, alone: a hold on flanges that swing would bend the
// strip. Only a strip that nothing touches is held as far as the zone goes.
void IncrementSolver::hold_rigid_modes() {
    std::fill(hold_x_.begin(), hold_x_.end(), 0.0);
    std::fill(hold_y_.begin(), hold_y_.end(), 0.0);
    std::vector<int> held;
    held.reserve(nodes_ + contacts_.groups_used);
    for (int k = 0; k < contacts_.groups_used; ++k) held.push_back(contacts_.groups[k].element);
    if (held.size() < 2)
        for (int e = scene_.first_element; e <= scene_.last_element; ++e) held.push_back(e);
    double whole = 0.0, zone = 0.0;
    for (const int e : held) whole += length_[e];
    for (int e = scene_.first_element; e <= scene_.last_element; ++e) zone += length_[e];
    const double share = std::min(zone, limits::held_length * thickness_) / whole;
    for (const int e : held)
        for (const int i : {e, e + 1}) {
            hold_x_[i] += 0.5 * share * length_[e] * limits::hold_along * law_.modulus;
            hold_y_[i] += 0.5 * share * length_[e] * limits::hold_across * law_.modulus;
        }
}

// What stays fixed during the increment: the surfaces, the points that may touch, the length-scale weights.
void IncrementSolver::prepare(SolverState& c, double ram_move, double ratio) {
    start_layers(c);
    strain_elements(c.u);
    stand_tools(c.u, c.u, c.travel, 0.0);
    slip_scale_ = ram_move != 0.0 ? std::max(limits::slip * std::abs(ram_move), 1e-6 * thickness_)
                                  : limits::slip * limits::first_increment * thickness_;
    find_contacts(scene_, c.u, stands_, 2.0 * std::abs(ram_move) + 0.15 * thickness_, contacts_);
    hold_rigid_modes();
    if (touches_itself_)
        find_self_contacts(scene_, c.u, 2.0 * std::abs(ram_move) + 0.3 * thickness_, self_contacts_);

    // Weights of the length-scale term, from the most active element within reach: one that was inactive up
    // to now must not take all of a hinge on itself when it begins to flow.
    std::fill(length_scale_.begin(), length_scale_.end(), 0.0);
    if (!(options_.length_scale > 0.0) || !(ratio > 0.0)) return;
    const double l = options_.length_scale * thickness_, reach = limits::length_scale_reach * thickness_;
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
        length_scale_[e] = l * l * l * l * moment / expected * length_[e];
    }
}

double IncrementSolver::gap_at(const std::vector<double>& u, tool::Role role) {
    std::vector<double> all = u;
    all.resize(unknowns_, 0.0);
    strain_elements(all);
    stand_tools(all, all, 0.0, 0.0);
    double least = 1e300;
    for (std::size_t k = 0; k < stands_.size(); ++k)
        if ((*scene_.tools)[k].role == role)
            least = std::min(least, least_gap(scene_, all, stands_[k], static_cast<int>(k)));
    return least;
}

}  // namespace overbend::stroke
