// A strip and rigid tools one element wide, for decks of whole strokes: C3D8I elements that do not move
// across the width, so in plane strain, and penalty contact of the strip's nodes with the tools' faces.
//
// Of the solver's kinds of contact this is the one that converges where the strip slides along a tool.
//
// Units  mm, N; 1 mm of width.

#pragma once

#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "sim/tool/arc_outline.h"
#include "tests/outside/deck.h"
#include "tests/outside/shape_figures.h"

namespace overbend::tests {

// Elements in columns and rows, their nodes in two planes.
struct Slab {
    int first_node = 1, first_element = 1, columns = 0, rows = 0;

    // i from 0 to columns, j from 0 to rows, plane 0 or 1.
    int node(int i, int j, int plane) const { return first_node + 2 * (i * (rows + 1) + j) + plane; }
    int element(int column, int row) const { return first_element + column * rows + row; }
    int last_element() const { return element(columns - 1, rows - 1); }
    std::vector<int> nodes() const;
    std::vector<int> front_nodes() const;  // of plane 0
    std::vector<int> column_of_nodes(int i) const;
};

// place(i, j): where the nodes lie; i to j turns counterclockwise.
Slab add_slab(Deck& deck, int columns, int rows, const std::function<Point(int i, int j)>& place);

// A flat strip, its columns at the blank positions.
struct StripPlacing {
    Point left{};       // of the mid-line
    double turn = 0.0;  // rad
};
Slab add_strip(Deck& deck, const std::vector<double>& blank, double thickness, int rows,
               const StripPlacing& placing);

// The faces of a tool that lie in a box, as a thin layer of elements below its outline. All nodes to be held
// or moved; surface NAME is the outline.
std::vector<int> add_tool(Deck& deck, const std::string& name, const tool::ArcOutline& outline,
                          const Point& position, const tool::Box& box);

// Lower (1) or upper (2) faces of a slab's columns as a surface.
enum class Face { lower, upper };
void face_surface(Deck& deck, const std::string& name, const Slab& slab, Face face, int first_column,
                  int last_column);

// Contact with friction between surfaces; the first one's nodes are kept out of the second one.
// name: of the kind of contact, another one for another friction.
void touch(Deck& deck, const std::string& name, const std::vector<std::pair<std::string, std::string>>& pairs,
           double friction);

// Weak springs from nodes to the ground, in directions 1 (x) or 2 (y); stiffness in N/mm.
void hold_softly(Deck& deck, const std::vector<std::pair<int, int>>& nodes_and_directions, double stiffness);

// Blank positions: columns of `fine` length within `reach` of one of the places, growing by a fifth from
// column to column beyond, to `coarse` at most.
std::vector<double> graded_columns(double length, const std::vector<double>& places, double reach,
                                   double fine, double coarse);

// The strip in a printed state, its sections turned as their nodes lie by least squares.
BentShape bent_shape(const Deck& deck, const Slab& strip, const std::vector<double>& blank,
                     const std::map<int, Point>& displacement);

}  // namespace overbend::tests
