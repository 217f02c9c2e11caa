// The stored results of the decks of whole strokes: tests/outside/stroke_decks.csv.

#pragma once

#include <string>
#include <vector>

#include "tests/outside/shape_rows.h"

namespace overbend::tests {

// Each figure of both meshes; the finer one's is the reference.
const std::vector<ShapeRow>& stored_stroke_decks();

// Works the strokes out again with finite elements, on two meshes each, and writes the file. only: a stroke's
// name; empty: all.
void run_and_store_stroke_decks(const std::string& only);

// Prints the figures of a run by hand, of its deck's table.
void print_stroke_figures(const std::string& name, int rows, const std::string& table_file);

}  // namespace overbend::tests
