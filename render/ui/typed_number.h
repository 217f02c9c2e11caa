// A number as people type it into a field: with a comma or a point before its decimals, with or without the
// unit that the field shows.
//
//   read_typed("0,8", {0.05, 6.0, "%.3f mm"}).value      // 0.8
//   read_typed("0.8x", {0.05, 6.0, "%.3f mm"}).wrong     // "\"0.8x\" is not a number"

#pragma once

#include <optional>
#include <string>

namespace overbend::ui {

struct NumberField {
    double low = 0.0, high = 0.0;  // both taken
    const char* format = "%g";     // as printf's, with the unit
};

struct TypedNumber {
    std::optional<double> value;
    std::string wrong;  // in words, where there is none; what is kept is not said
};

TypedNumber read_typed(const std::string& text, const NumberField& field);

// The value as the field shows it.
std::string shown_number(double value, const NumberField& field);

}  // namespace overbend::ui
