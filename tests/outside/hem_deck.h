// A hem by finite elements and here: an acute V bend, released, then closed between two flat faces.
//
// Both flanges are equally long, so that each half is the other's mirror image: the deck has one of them,
// which a flat tool presses towards the plane of symmetry, and whose inner face that plane keeps out.
// The flat tools have no friction. What there is would sum up to nothing on each half, since both halves have
// the same; while a flange's end alone touches it is nothing, and the solver loses a strip that sticks at one
// place.
//
// Units  mm, N per mm of width.

#pragma once

#include <string>
#include <vector>

#include "tests/outside/deck.h"
#include "tests/outside/stroke_decks.h"

namespace overbend::tests {

// What comes of the closing; travel: how far the faces of the flat tools have come nearer than `hem_room` to
// one another.
constexpr double hem_room = 6.0;

std::string hem_deck(const DeckMesh& mesh);
StrokeRun read_hem_deck(const DeckMesh& mesh, const std::vector<PrintedState>& states);
StrokeRun hem_here();

}  // namespace overbend::tests
