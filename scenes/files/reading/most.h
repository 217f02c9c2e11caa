// How heavy a file may be that is read: the one home of these limits. They are far above what a press shop
// needs, and low enough that a file from a stranger is read, or refused with a sentence, within seconds.

#pragma once

#include <cstddef>

namespace overbend::files::most {

constexpr std::size_t toml_bytes = 4u << 20;  // of a case, a card or a rack
constexpr std::size_t dxf_bytes = 32u << 20;  // of a drawing

// Tables within tables. A library that reads or frees them calls itself for each: its stack is what gives
// way. A case has three; the parts of its keys, tool.faces, are two.
constexpr int key_parts = 8;  // of a dotted key or a table's name
constexpr int nesting = 8;    // brackets within brackets

constexpr std::size_t text_letters = 2000;  // of a source, which takes some hundred, or a path
constexpr std::size_t name_letters = 120;   // of a title, a name, a word

}  // namespace overbend::files::most
