// Records as text, in the ways that machines write them.

#pragma once

#include <string>

#include "sim/tensile/record.h"

namespace overbend::tests {

struct Writing {
    std::string above = {};  // lines before the figures, headings among them
    std::string separator = ",";
    bool decimal_comma = false;
    double per_strain = 1.0;  // figure of a strain of 1: 100 for per cent, the gauge length for mm
    double per_stress = 1.0;  // figure of 1 MPa
    std::string behind = {};  // on every line
};
std::string written(const tensile::Record& record, const Writing& writing);

}  // namespace overbend::tests
