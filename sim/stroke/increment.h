// One increment of a stroke: the ram moves a little, and the strip's new equilibrium is found.
//
// The increment is the minimum of an energy: sections (their potential from the last accepted state) with
// shear, contact, friction with lagged normal forces, springs, weight, the hold of rigid modes and the
// length-scale term. Each is a function of its own (equations.h says where); their sum is here. Newton's
// method with the exact tangent (friction's dependence on pressure included, so it is slightly unsymmetric),
// a predictor, and a line search on the energy.
//
// Units  mm, rad, MPa, N per mm width.

#pragma once

#include <string>
#include <vector>

#include "sim/material/section.h"
#include "sim/strip/beam_element.h"
#include "sim/stroke/contact.h"
#include "sim/stroke/equations.h"
#include "sim/stroke/far_solve.h"
#include "sim/stroke/hold.h"
#include "sim/stroke/length_scale.h"
#include "sim/stroke/sections.h"
#include "sim/stroke/self_contact.h"
#include "sim/stroke/solver_options.h"
#include "sim/stroke/solver_state.h"
#include "sim/stroke/spring_force.h"
#include "sim/stroke/stroke_scene.h"

namespace overbend::stroke {

enum class StepOutcome { solved, not_converged, folded, no_hold };

// Of the strip's nodes, in turn.
std::vector<double> unknowns_of(const strip::StripState& strip);

// Workspace for many increments of one stroke on one strip.
class IncrementSolver {
  public:
    // scene must outlive the solver; its stop is not looked at.
    IncrementSolver(const StrokeScene& scene, const SolverOptions& options);

    // Fills everything of `state` that follows from its strip; travel 0. Neither weight nor clamps in the
    // frame are on.
    void start(SolverState& state);

    // Applies the weight and the clamps in the frame, with the ram still, and starts the energy balance.
    // False: no equilibrium of the strip.
    bool apply_standing_loads(SolverState& state);

    // Moves the ram by ram_move (down positive). On success `state` is the new state, otherwise it is as
    // before.
    StepOutcome step(SolverState& state, double ram_move);

    // Releases the strip: every section to zero force and zero moment, from where it is; the middle of the
    // forming zone keeps its place. False: a section found no such state.
    bool release(SolverState& state);

    // Turn between two blank positions after section-wise unloading; an estimate for stops.
    double free_turn(SolverState& state, double left, double right);

    // Least gap to the tools of a role with the strip's unknowns at u, springs unloaded; 1e300 when they are
    // far.
    double gap_at(const std::vector<double>& u, tool::Role role);

    // Of the last accepted step.
    double last_curvature_move() const { return curvature_move_; }  // largest, 1/mm
    double last_slip() const { return slip_; }                      // largest of a point that is pressed, mm
    double last_residual() const { return residual_; }
    double force_scale() const { return force_scale_; }

  private:
    struct Totals {
        double energy = 0.0;
        ContactSum contact;
        double along = 0.0, hold = 0.0, length_scale = 0.0, springs = 0.0, weight = 0.0;
        bool folded = false;
    };
    material::LayerHistory* history(strip::StripState& s, int e) const;
    void prepare(SolverState& state, double ram_move, double predicted_ratio);
    Totals evaluate(const SolverState& state, const std::vector<double>& u, double ram_move);
    void add_hessians();
    bool has_standing_loads() const;
    StepOutcome apply_loads(SolverState& state, double load_fraction);
    void begin_audit(SolverState& state) const;
    void stand_tools(const std::vector<double>& u, const std::vector<double>& before, double travel,
                     double ram_move);
    void start_springs(SolverState& state);
    SpringStops stops_of(const tool::RigidTool& tool) const;
    SpringUnknown spring_unknown(int tool, const SolverState& state) const;
    std::vector<SpringUnknown> spring_unknowns(const SolverState& state) const;
    double slope_along_direction() const;
    double residual_norm() const;
    bool solve_direction(double least_pivot);
    bool newton_direction(const SolverState& state, double ram_move);
    StepOutcome newton(SolverState& state, double ram_move);
    void accept(SolverState& state, double ram_move, const Totals& totals);
    material::FreeSection release_section(SolverState& state, int element);
    bool release_sections(SolverState& state);
    double contact_force_on_ram() const;
    double squeeze_force();

    material::LayerLaw law_;
    material::SectionShape shape_;
    SolverOptions options_;
    ContactScene scene_;
    double thickness_ = 0.0;
    int nodes_ = 0, layers_ = 0;
    int unknowns_ = 0;         // of the nodes and the springs
    std::vector<int> sprung_;  // tools with springs
    ToolStands stands_;        // in the state that is evaluated
    double enough_ = 0.0;      // residual at an equilibrium, see limits::residual
    double weight_ = 0.0;      // N per mm2
    double force_scale_ = 0.0;
    std::vector<double> length_;
    StripStrains strains_;  // at the state that is evaluated
    Hold hold_;
    LengthScale length_scale_;
    Sections sections_;
    std::vector<double> u_, trial_, direction_;
    std::vector<double> moving_, standing_;  // per element: forces of tools
    Equations equations_;
    bool touches_itself_ = false;
    SelfContactSet self_contacts_;
    FarFactors far_factors_;
    ContactSet contacts_;
    double curvature_move_ = 0.0;
    double slip_ = 0.0;
    double residual_ = 0.0;
    int iterations_ = 0;
};

}  // namespace overbend::stroke
