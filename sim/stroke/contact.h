// Contact of the strip's two surfaces with rigid outlines, with friction.
//
// A surface point of element e at xi in [-1, 1], N1 = (1 - xi)/2, N2 = (1 + xi)/2, theta = N1 th1 + N2 th2,
// n = (-sin theta, cos theta):
//   x = N1 r1 + N2 r2 + (L/8 (1 - xi^2) (th1 - th2) + N1 y1 + N2 y2) n
// The first bracketed term makes the mid-line an arc between its nodes, so that the surface is smooth. y1, y2
// are the surface's heights over the mid-line at the nodes, from the section as it is there,
//   y = +-t / (G + sqrt(G^2 -+ t k))        (upper sign: upper surface; see sim/material/section.h)
// with G and k the means of the two elements at the node. Bending moves a surface against what presses on it,
// by t^2/8 dk to first order, so a pressure p takes p t^2/8 off the section's moment under it: M + t^2/8 M'',
// which is the moment spread over half a thickness either side. Nothing is tuned for that; leaving it out
// (heights taken from the last state) loses 4 to 8 per cent of the work of a V stroke.
//
// Pressure   p(gap) N/mm2: straight with the stiffness of half the thickness, 2 E'/t, smooth over |gap| <
// soft;
//            a strip squeezed from both sides then gives way with E'/t.
// Friction   T = - mu p s / sqrt(s^2 + s0^2), s the slip in this increment: Coulomb, but for slips smaller
// than a
//            fiftieth of the tools' move.
// Units      mm, MPa, N per mm width.

#pragma once

#include <Eigen/Core>
#include <vector>

#include "sim/strip/beam_element.h"
#include "sim/stroke/band_solve.h"
#include "sim/stroke/recording.h"
#include "sim/tool/signed_distance.h"
#include "sim/tool/tool_set.h"

namespace overbend::stroke {

using Vec2 = Eigen::Vector2d;

// The part of the strip that the tools may press, in blank positions. Outside it a touch is an interference:
// it is measured, not solved.
struct FormingZone {
    double low = -1e300, high = 1e300;
};

struct ContactLaw {
    double stiffness = 0.0;  // N/mm2 per mm of overlap
    double soft = 0.0;       // mm, half width of the smooth start
    double friction = 0.0;   // Coulomb's coefficient
    double spacing = 0.07;   // largest distance of neighbouring contact points, in thicknesses
};

// Pressure and what belongs to it at a gap.
struct Pressure {
    double value = 0.0;   // N/mm2
    double slope = 0.0;   // d value / d gap, <= 0
    double energy = 0.0;  // N/mm, d energy / d gap = - value
};
Pressure pressure_at(const ContactLaw& law, double gap);

// Points of one surface of one element that may touch one tool in this increment.
struct ContactGroup {
    int element = 0;
    int tool = 0;
    double side = 1.0;         // +1 the upper surface, -1 the lower one
    int first = 0, count = 0;  // of its points
    std::vector<int> pieces;   // of the tool's outline that come near
};

struct ContactPoint {
    double xi = 0.0;
    double weight = 0.0;        // mm of the mid-line
    Vec2 start = Vec2::Zero();  // where it was in the last accepted state
    double normal_force = 0.0;  // of the last evaluation, N per mm
    double friction_force = 0.0;
    double lagged_force = 0.0;  // normal force that the friction's energy is measured with
    double slip = 0.0;          // along the tool in this increment, mm
    Vec2 force = Vec2::Zero();  // of the last evaluation, on the strip
    Vec2 place = Vec2::Zero();
};

struct ContactSet {
    std::vector<ContactGroup> groups;
    std::vector<ContactPoint> points;
    int groups_used = 0;  // groups beyond are spare room
};

// What contact needs to know of the strip and the tools.
struct ContactScene {
    const tool::ToolSet* tools = nullptr;
    ContactLaw law;
    double thickness = 0.0;
    const std::vector<double>* length = nullptr;                // of elements
    const std::vector<strip::ElementStrain>* strain = nullptr;  // of elements, at the state that is evaluated
    int first_element = 0, last_element = -1;                   // of the forming zone
};

// Collects the points that may touch within `reach` of where the strip is (u: x, y, theta per node).
void find_contacts(const ContactScene& scene, const std::vector<double>& u, double travel, double reach,
                   ContactSet& set);

// Sums over all points at u. gradient and matrix are added to.
struct ContactSum {
    double energy = 0.0;    // stored in the contacts, N
    double friction = 0.0;  // energy of friction with lagged normal forces
};
ContactSum add_contacts(const ContactScene& scene, const std::vector<double>& u, double travel,
                        double ram_move, ContactSet& set, std::vector<double>& gradient, BandMatrix& matrix);

// Takes the normal forces of the last evaluation as the lagged ones; returns the friction's energy with them.
double lag_friction(ContactSet& set, const ContactLaw& law, double ram_move, double thickness);

// The forces of the last evaluation, neighbouring points (nearer than reach, mm) on one tool summed to one
// patch that acts where they act together.
std::vector<ContactForce> contact_patches(const ContactSet& set, double reach);

// Least gap between the strip's surfaces in the forming zone and the tools of a role, 1e300 when all are far.
double least_gap(const ContactScene& scene, const std::vector<double>& u, double travel, tool::Role role);

}  // namespace overbend::stroke
