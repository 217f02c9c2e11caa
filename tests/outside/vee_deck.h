// The finite-element deck of a V air bend with contact, and what comes of it. Slow: run by hand.
//
// Half of the symmetric strip, 8 CPE8R elements through its thickness; the nose's and the shoulder's arcs are
// patches of elements all of whose nodes are held or moved; surface-to-surface penalty contact with friction.
// Travel counts from first touch.
//
// Units  mm, N per mm of width, degrees.

#pragma once

#include <string>

#include "sim/material/card.h"

namespace overbend::tests {

struct VeeDeckBend {
    std::string name, card;  // card: of finite_element_cards.h
    double thickness = 1.0, die_opening = 8.0, shoulder_radius = 1.0, nose_radius = 1.0, friction = 0.1;
    double travel = 0.0;
};

struct VeeDeckResult {
    double end_force = 0.0, peak_force = 0.0;
    double included_loaded = 0.0, included_free = 0.0;
};

std::string vee_deck(const VeeDeckBend& bend);
VeeDeckResult run_vee_deck(const VeeDeckBend& bend);

}  // namespace overbend::tests
