// The hold of rigid modes: springs too weak to matter that resist the move of an increment, so that a strip
// which tools hardly hold has an equilibrium. Energy 1/2 sum (along dx^2 + across dy^2) over the nodes.
//
// Shapes  along, across: one a node.
// Units   mm, N per mm of width; energy N.

#pragma once

#include <vector>

#include "sim/stroke/contact.h"
#include "sim/stroke/equations.h"

namespace overbend::stroke {

struct Hold {
    std::vector<double> along, across;  // by x and by y, N/mm per mm
};

// Nodes are held where tools touch, or may touch, alone: a hold on flanges that swing would bend the strip.
// Only a strip that nothing touches is held as far as the forming zone goes. modulus: E', MPa.
Hold hold_rigid_modes(const ContactScene& scene, const ContactSet& contacts, double modulus);

// before, u: unknowns at the increment's start and now. Returns the energy.
double add_hold(const Hold& hold, const std::vector<double>& before, const std::vector<double>& u,
                Equations& to);

}  // namespace overbend::stroke
