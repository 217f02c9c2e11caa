// Pixels as a film's encoder takes them: brightness for each, colour for four at a time (yuv420p).
//
// Source  ITU-R BT.709-6, item 3: E'Y = 0.2126 R + 0.7152 G + 0.0722 B, and its quantisation to 8 bits with
//         black at 16 and white at 235, colour differences 16 to 240 around 128. What is told of the colour
//         (bt709, limited range) goes into the film's head: see encoder.h.

#pragma once

#include <cstdint>
#include <vector>

#include "render/picture/painter.h"

namespace overbend::film {

// The three planes one after the other: width x height bytes, then twice a quarter of that; the colour of
// four pixels is their mean. `into` keeps its memory. Throws OutOfRange: a width or height that is odd.
void to_yuv420p(const picture::Pixels& pixels, std::vector<std::uint8_t>& into);

}  // namespace overbend::film
