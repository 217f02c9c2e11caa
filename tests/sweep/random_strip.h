// Random strokes of one strip, over all kinds, cards and the range of sizes that the program is for.

#pragma once

#include <cstdint>
#include <string>

#include "scenes/job/run/strip_stroke.h"

namespace overbend::tests {

enum class Kind { air_bending, bottoming, offset, channel, wiping };
constexpr int kinds = 5;
const char* kind_word(Kind kind);

// A stroke with its stop, drawn by a seed of its own: thickness 0.2 to 8 mm, flanges to 300 thicknesses,
// friction 0 to 0.3, tools in proportion to the thickness.
struct RandomStroke {
    Kind kind = Kind::air_bending;
    std::string words;  // what was drawn
    job::StripStroke stroke;
    stroke::Stop stop;
};
// finer: the mesh, over the usual one. Throws OutOfRange when the tools do not go together.
RandomStroke random_stroke(std::uint64_t seed, double finer);

}  // namespace overbend::tests
