// Contact of the strip's two surfaces with rigid outlines, with friction.
//
// Surface points: see surface.h. Their heights are those of the sections as they are, so bending moves a
// surface against what presses on it, by t^2/8 dk to first order, and a pressure p takes p t^2/8 off the
// section's moment under it: M + t^2/8 M'', which is the moment spread over half a thickness either side; and
// a strip that is squeezed from both sides flows along itself, since what it loses in thickness it gains in
// length. Nothing is tuned for that; leaving it out (heights taken from the last state) loses 4 to 8 per cent
// of the work of a V stroke.
//
// Pressure   p(gap) N/mm2: straight with the stiffness of half the thickness, 2 E'/t, smooth over |gap| <
//            soft; a strip squeezed from both sides then gives way with E'/t.
// Friction   Coulomb's, with memory: a point that sticks is held as by the shear stiffness of half the
//            thickness, 2 G/t, from the traction that it had in the last accepted state, q = q_0 - (2 G/t) s
//            with s the slip in this increment, and slides at |q| = mu p. The corner is rounded over a tenth
//            of mu p either side. A point that sticks so does not creep, however often the ram moves.
// Units      mm, MPa, N per mm width.

#pragma once

#include <Eigen/Core>
#include <vector>

#include "sim/stroke/equations.h"
#include "sim/stroke/recording.h"
#include "sim/stroke/surface.h"
#include "sim/tool/signed_distance.h"
#include "sim/tool/tool_set.h"

namespace overbend::stroke {

struct ContactLaw {
    double stiffness = 0.0;  // N/mm2 per mm of overlap
    double soft = 0.0;       // mm, half width of the smooth start
    double friction = 0.0;   // Coulomb's coefficient
    double stick = 0.0;      // N/mm2 per mm of slip
    double spacing = 0.07;   // largest distance of neighbouring contact points, in thicknesses
};

// Pressure and what belongs to it at a gap.
struct Pressure {
    double value = 0.0;   // N/mm2
    double slope = 0.0;   // d value / d gap, <= 0
    double energy = 0.0;  // N/mm, d energy / d gap = - value
};
Pressure pressure_at(const ContactLaw& law, double gap);

// Traction of friction on a point along the tool, and what belongs to it.
struct Traction {
    double value = 0.0;        // q, N/mm2; along the tool, its material on the left
    double by_slip = 0.0;      // dq/ds, <= 0
    double by_pressure = 0.0;  // dq/dp
    double energy = 0.0;       // N/mm, d energy/ds = - q at a fixed pressure
};
// held: q_0.
Traction traction_at(const ContactLaw& law, double held, double slip, double pressure);

// What a group's points were held with in an accepted state.
struct HeldGroup {
    int tool = 0, element = 0;
    double side = 1.0;
    std::vector<double> traction;  // N/mm2
};

// Points of one surface of one element that may touch one tool in this increment.
struct ContactGroup {
    int element = 0;
    int tool = 0;
    double side = 1.0;         // +1 the upper surface, -1 the lower one
    int first = 0, count = 0;  // of its points
    std::vector<int> pieces;   // of the tool's outline that come near
    // When its points were looked at last: how far from the tool they all were at least, beyond the smooth
    // start (0: look again), and where it stood.
    double clear = 0.0;
    double seen[6] = {}, seen_heights[2] = {};  // x, y, theta of both nodes; of the surface there
    Vec2 tool_at = Vec2::Zero();
};

struct ContactPoint {
    double xi = 0.0;
    double weight = 0.0;        // mm of the mid-line
    Vec2 start = Vec2::Zero();  // where it was in the last accepted state
    double normal_force = 0.0;  // of the last evaluation, N per mm
    double lagged_pressure = 0.0;  // that the friction's energy is measured with, N/mm2
    double held = 0.0;             // traction in the last accepted state, N/mm2
    double traction = 0.0;         // of the last evaluation
    double slip = 0.0;             // along the tool in this increment, mm
    Vec2 force = Vec2::Zero();     // of the last evaluation, on the strip
    Vec2 place = Vec2::Zero();
};

struct ContactSet {
    std::vector<ContactGroup> groups;
    std::vector<ContactPoint> points;
    int groups_used = 0;  // groups beyond are spare room
};

// What contact needs to know of the strip and the tools.
struct ContactScene : SurfaceStrip {
    const tool::ToolSet* tools = nullptr;
    ContactLaw law;
    int first_element = 0, last_element = -1;  // of the forming zone
};

// How a tool stands in the state that is evaluated.
struct ToolStand {
    Vec2 at = Vec2::Zero();     // of its origin
    Vec2 moved = Vec2::Zero();  // since the last accepted state
    int spring = -1;            // its place among the springs; -1: it has none
    Vec2 gives = Vec2::Zero();  // how it moves as its spring is compressed
};
using ToolStands = std::vector<ToolStand>;  // one a tool

// Collects the points that may touch within `reach` of where the strip is (u: the nodes' unknowns). held: of
// the accepted state that the increment starts from.
void find_contacts(const ContactScene& scene, const std::vector<double>& u, const ToolStands& stands,
                   double reach, const std::vector<HeldGroup>& held, ContactSet& set);

// What the points are held with after an increment, and what that stores, N.
std::vector<HeldGroup> held_groups(const ContactSet& set);
double held_energy(const ContactSet& set, const ContactLaw& law);

// The contacts' term of an increment's energy. Sums over all points at u. With friction the hessian is the
// forces' derivative, no energy's.
struct ContactSum {
    double energy = 0.0;    // stored in the contacts, N
    double friction = 0.0;  // energy of friction with lagged pressures
};
ContactSum add_contacts(const ContactScene& scene, const std::vector<double>& u, const ToolStands& stands,
                        ContactSet& set, Equations& to);

// Takes the pressures of the last evaluation as the lagged ones; returns the friction's energy with them.
double lag_friction(ContactSet& set, const ContactLaw& law);

// The forces of the last evaluation, neighbouring points (nearer than reach, mm) on one tool summed to one
// patch that acts where they act together.
std::vector<ContactForce> contact_patches(const ContactSet& set, double reach);

// Least gap between the strip's surfaces in the forming zone and a tool, 1e300 when it is far.
double least_gap(const ContactScene& scene, const std::vector<double>& u, const ToolStand& stand, int tool);

}  // namespace overbend::stroke
