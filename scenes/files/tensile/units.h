// Units of columns, and what a word in a heading says of one.

#pragma once

#include <optional>
#include <string>
#include <vector>

namespace overbend::files {

enum class Quantity { ignored, strain, elongation, force, stress, width, width_strain };
const char* quantity_word(Quantity quantity);  // "elongation"

// So many of the program's units (1 for strain, mm, N, MPa) is one of these; none: not a unit of this
// quantity.
std::optional<double> unit_factor(Quantity quantity, const std::string& unit);
std::vector<std::string> known_units(Quantity quantity);

// Lower case, with letters of other languages as they are.
std::string lower(std::string text);

// The unit in a heading: in brackets, or its last word: "Force (kN)", "strain_%", "stress MPa"; empty: none.
std::string unit_in(const std::string& heading);

}  // namespace overbend::files
