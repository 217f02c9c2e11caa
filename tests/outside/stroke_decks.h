// Finite-element decks of whole strokes: an offset, a bottomed V, a hem. Slow: run by hand.
//
// A deck is made of the program's own stroke as it is set up: the same blank in the same place, the same
// outlines of tools. What comes out of either is measured by the same functions.
//
// Units  mm, N per mm of width, degrees.

#pragma once

#include <map>
#include <string>
#include <vector>

#include "scenes/job/run/strip_stroke.h"
#include "sim/stroke/stroke.h"
#include "tests/outside/shape_figures.h"

namespace overbend::tests {

// A stroke as it went, here or in finite elements.
struct StrokeRun {
    std::vector<stroke::CurvePoint> curve;  // force on the punch over its travel, until the stop
    BentShape loaded, free;
    BentShape first;  // of two strokes: free after the first
};

// How fine a deck is: elements over the thickness, and columns to a thickness where the strip is bent.
struct DeckMesh {
    int rows = 8;
};

// The names of the strokes.
const std::vector<std::string>& stroke_decks();

// The deck as text, for a run by hand.
std::string stroke_deck(const std::string& name, const DeckMesh& mesh);
// Runs it with the solver. Throws std::runtime_error when that does not solve.
StrokeRun run_stroke_deck(const std::string& name, const DeckMesh& mesh);
// The same from the table that the solver wrote in a run by hand.
StrokeRun read_stroke_deck(const std::string& name, const DeckMesh& mesh, const std::string& table);
// The program's stroke. Throws std::runtime_error when it does not reach its stop.
StrokeRun stroke_here(const std::string& name);

// What is compared, by name: "turn loaded", ...
std::map<std::string, double> stroke_figures(const std::string& name, const StrokeRun& run);

}  // namespace overbend::tests
