// How heavy a file may be that is read: the one home of these limits. They are far above what a press shop
// needs, and low enough that a file from a stranger is read, or refused with a sentence, within seconds.

#pragma once

#include <cstddef>

namespace overbend::files::most {

constexpr std::size_t toml_bytes = 4u << 20;  // of a case, a card or a rack
constexpr std::size_t dxf_bytes = 8u << 20;   // of a drawing
constexpr std::size_t dxf_pieces = 1000;      // lines and arcs of an outline

// Tables within tables. A library that reads or frees them calls itself for each: its stack is what gives
// way. A case has three; the parts of its keys, tool.faces, are two.
constexpr int key_parts = 8;  // of a dotted key or a table's name
constexpr int nesting = 8;    // brackets within brackets

constexpr std::size_t text_letters = 2000;  // of a source, which takes some hundred, or a path
constexpr std::size_t name_letters = 120;   // of a title, a name, a word

// Every list has a limit, and some a lower one: their entries are looked up in one another.
constexpr std::size_t entries = 1000;  // points of an outline or of a flow curve, cut-outs
constexpr std::size_t bends = 200;
constexpr std::size_t tools = 200;  // of a case and its rack together
constexpr std::size_t steps = 200;

constexpr std::size_t study_inputs = 50;          // of a study; a correlation matrix has the square of it
constexpr std::size_t study_grid_rows = 100'000;  // of all its grids together
constexpr std::size_t study_rows_bytes = 1u
                                         << 30;  // of the rows of a study that are read back: a million or so

}  // namespace overbend::files::most
