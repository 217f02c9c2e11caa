// Case files, racks and cards that are right, for tests to spoil. Every key there is stands in one of them,
// each on a line of its own.

#pragma once

#include <string>

namespace overbend::tests {

extern const std::string pressed_case;   // pads, clamps, wiping and flat tools, a hem; a card by name
extern const std::string whole_case;     // every kind of tool and of stroke, its card in it
extern const std::string racked_case;    // with tools of a rack that comes with the program
extern const std::string drawn_case;     // an outline from the file block.dxf beside it
extern const std::string rack_file;      // a rack of one's own
extern const std::string swift_card;     // with every optional key
extern const std::string hollomon_card;  // only what a card must have, as the next three
extern const std::string voce_card;
extern const std::string linear_card;
extern const std::string table_card;
extern const std::string hard_steel;  // of a tool, with every optional key
extern const std::string soft_steel;  // only what it must have
extern const std::string press_card;  // with every key

}  // namespace overbend::tests
