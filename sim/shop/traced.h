// A figure that knows how it came to be: its formula in words, and what went in.

#pragma once

#include <string>
#include <vector>

namespace overbend::shop {

struct TracedInput {
    std::string name;  // "mass of the blank"
    double value = 0.0;
    std::string unit;
};

struct Traced {
    double value = 0.0;
    std::string unit;
    std::string formula;              // "mass of the blank x price of the strip"
    std::vector<TracedInput> inputs;  // in the order in which the formula names them
};

}  // namespace overbend::shop
