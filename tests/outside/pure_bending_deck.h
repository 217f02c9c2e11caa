// The finite-element deck of a strip in pure bending at large strain, and what comes of it.
//
// Plane strain, CPE8R; the strip ends in a symmetry line on the left and in a stiff block on the right, whose
// end is turned by two equal and opposite forces, so that the strip carries a couple and nothing else. Radii
// come from circles through the nodes of both surfaces near the symmetry line.
//
// Units  mm, N mm per mm of width.

#pragma once

#include <string>
#include <vector>

#include "sim/material/card.h"

namespace overbend::tests {

struct PureBendingDeck {
    material::Card card;
    double thickness = 1.0;
    double length = 3.0;  // of the strip, mm
    int columns = 24, rows = 16;
    double curvature = 0.2;  // to bend to, 1/mm
    double free_guess =
        0.19;  // 1/mm; the unloaded states are placed around it, and it is interpolated between them
    int increments = 40;
};

struct PureBendingState {
    double curvature = 0.0;  // 2 / (inner radius + outer radius)
    double moment = 0.0;
    double thickness = 0.0;  // on the symmetry line
};

struct PureBendingRun {
    std::vector<PureBendingState> loading;
    double free_curvature = 0.0;  // where the couple is gone after the last of them
};

PureBendingRun run_pure_bending_deck(const PureBendingDeck& subject);

}  // namespace overbend::tests
