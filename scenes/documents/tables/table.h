// A table of figures, laid out once: terminal, page and window print the same one, with the same decimals.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/finding.h"

namespace overbend::documents {

constexpr int in_words = -1;  // decimals of a column that has words, flush left; figures are flush right

struct Column {
    std::string name;
    std::string unit = {};  // "mm", "deg"; empty: none
    int decimals = in_words;
    std::string brief = {};  // its name where room is scarce; empty: it is left out there
    std::string key = {};    // its name in JSON; empty: it is not there, or otherwise
};

struct Cell {
    Cell() = default;  // not known
    Cell(std::string said) : words(std::move(said)), known(true) {}
    Cell(const char* said) : words(said), known(true) {}
    Cell(double value) : number(value), known(true) {}
    Cell(double value, int decimals_, std::string unit_)
        : number(value), known(true), decimals(decimals_), unit(std::move(unit_)) {}

    std::string words;
    std::optional<double> number;
    bool known = false;
    int decimals = in_words;  // where rows differ: this cell's own,
    std::string unit = {};    // printed behind the figure
    Severity severity = Severity::within;
};

struct Table {
    std::string title;
    std::vector<Column> columns;
    std::vector<std::vector<Cell>> rows;  // as long as the columns; the first cell is the row's name
    std::vector<std::string> notes = {};
};

// The cell's words, or its figure with the column's decimals; "-" where it is not known.
std::string printed(const Column& column, const Cell& cell);
// A number with so many decimals, the same in every locale; "-0.00" is "0.00", no finite number is "-".
std::string figure_words(double value, int decimals);

// Columns with a brief name alone, under that name; all of them where none has one.
Table brief(const Table& table);

// For a terminal: title, heads broken to their columns' widths, units, rows, notes.
std::string table_text(const Table& table);

}  // namespace overbend::documents
