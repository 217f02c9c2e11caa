// Tolerances for checks. doctest::Approx adds 1 to the larger value before it applies epsilon, so near or
// below 1 it is an absolute tolerance; this one is relative throughout.

#pragma once

#include <cmath>

namespace overbend::tests {

// |found - expected| / |expected|; expected must not be 0.
inline double relative_error(double found, double expected) {
    return std::abs(found - expected) / std::abs(expected);
}

}  // namespace overbend::tests
