// A small case for checks of the commands.

#pragma once

#include <string>

namespace overbend::tests {

// Two bends in two strokes, the strip turned over between them, meshed so coarsely that a run takes a tenth
// of a second: for checks of what is done with numbers, not of the numbers. Feasible.
extern const std::string small_case;

// The same with a stop that no tool bears: the first stroke cannot be computed to its end.
std::string unsolvable_case();

}  // namespace overbend::tests
