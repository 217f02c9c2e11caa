// Decks for CalculiX, a general-purpose finite-element solver, and what it answers.
//
// Plane strain, eight-node elements of reduced integration (CPE8R).
//
// Units  mm, N, MPa; 1 mm of width.

#pragma once

#include <array>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "sim/material/card.h"

namespace overbend::tests {

using Point = std::array<double, 2>;

// A patch of elements, columns x rows, its nodes numbered by half steps.
struct Patch {
    int first_node = 1, first_element = 1, columns = 0, rows = 0;

    // i from 0 to 2 columns, j from 0 to 2 rows; both odd: the middle of an element, where no node is.
    int node(int i, int j) const { return first_node + i * (2 * rows + 1) + j; }
    int element(int column, int row) const { return first_element + column * rows + row; }
    int last_element() const { return element(columns - 1, rows - 1); }
    std::vector<int> row_of_nodes(int j, int from, int to) const;  // of the half steps from ... to
    std::vector<int> column_of_nodes(int i) const;
    std::vector<int> nodes() const;
};

// A deck being written. Names of sets in capitals.
class Deck {
  public:
    // Where the half steps u, v from 0 to 1 lie; u to v turns counterclockwise.
    using Place = std::function<Point(double u, double v)>;

    Patch add_patch(int columns, int rows, const Place& place);
    // plane: 0, or the distance from it across the width.
    void add_node(int number, const Point& at, double plane = 0.0);
    // So many numbers of nodes and elements in a row, for what is written by the caller; the first ones.
    struct Numbers {
        int node = 1, element = 1;
    };
    Numbers take_numbers(int nodes, int elements);
    void node_set(const std::string& name, const std::vector<int>& nodes);
    void element_set(const std::string& name, int first, int last);
    // An edge of a patch as a surface: 1 of v = 0, 3 of v = 1.
    void edge_surface(const std::string& name, const Patch& patch, int edge);
    // Elastic and plastic numbers of a card (isotropic hardening), for an element set.
    void plastic_section(const std::string& element_set, const material::Card& card);
    void elastic_section(const std::string& element_set, double youngs_modulus);
    void line(const std::string& text) { text_ += text + "\n"; }

    const std::string& text() const { return text_; }
    Point place_of(int node) const { return places_.at(node); }

  private:
    std::string text_;
    std::map<int, Point> places_;
    int next_node_ = 1, next_element_ = 1;
};

// What was printed at one time: of each set, of each node, two components. Totals stand as node 0.
struct PrintedState {
    double time = 0.0;
    std::map<std::string, std::map<int, Point>> displacement, force;
};

// Runs the solver `ccx` on one core in a folder of its own, an hour at most, and reads its table of printed
// values. Throws std::runtime_error when it is not installed, or ends without having solved; the end of what
// it said stands in the message.
std::vector<PrintedState> run_deck(const std::string& deck);
std::string table_of_deck(const std::string& deck);  // the same as it was printed

// The same from the text of its table, for checks.
std::vector<PrintedState> read_printed(const std::string& table);

}  // namespace overbend::tests
