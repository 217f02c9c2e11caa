// Points that fill a unit cube evenly: Sobol's sequence, each point by its number, so that it is the same
// wherever and in whatever order it is drawn.
//
// Source  direction numbers: S. Joe and F. Y. Kuo, "Constructing Sobol sequences with better two-dimensional
//         projections", SIAM J. Sci. Comput. 30 (2008) 2635-2654, their file new-joe-kuo-6, as the library
//         Boost.Random has it (boost/random/sobol.hpp). Shifted by whole bits, one number a dimension and
//         series (digital shift), which keeps the points as even and leaves none on an edge by design.

#pragma once

#include <cstdint>
#include <vector>

namespace overbend::job {

constexpr int most_dimensions = 1000;

// dimensions  1 to most_dimensions
// number      0 and up; series: another one, other points
// Values above 0 and below 1. Throws OutOfRange: the dimensions.
std::vector<double> sobol_point(int dimensions, std::uint64_t number, int series);

// Well mixed whole numbers, one a counter: for shifts and for samples drawn again.
std::uint64_t mixed(std::uint64_t counter);

}  // namespace overbend::job
