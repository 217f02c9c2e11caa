// A table in words, to be compared with another one.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/fields.h"

namespace overbend::files {

struct ToldField {
    std::string label;  // "opening of face 2", "from of relief"
    std::string text;   // "8 mm"; "60 mm" too where it is only usual
};

std::vector<ToldField> fields_told(const Fields::Show& show);

// "1.25 mm", "90 deg": as many digits as are needed, six at most.
std::string size_words(double value, const std::string& unit);

}  // namespace overbend::files
