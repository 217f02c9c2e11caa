// How a GIF is made smaller, step by step: fewer frames a second, then fewer pixels, then both.

#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "render/picture/layout.h"

namespace overbend::film {

struct GifRung {
    picture::PictureSize size;
    double frames_per_second = 0.0;  // 100 / n: a GIF counts hundredths of a second
};

// From the finest to the coarsest; at most 960 pixels across and 25 frames a second, at least 480 and 5,
// unless what was asked for is less.
std::vector<GifRung> gif_rungs(const picture::PictureSize& size, double frames_per_second);

// How many bytes one rung takes when another took so many.
double expected_bytes(double bytes, const GifRung& was, const GifRung& will_be);

// The finest rung below `tried` that is expected to keep to the limit, else the last one; none when `tried`
// is the last. bytes: what `tried` takes.
std::optional<std::size_t> next_rung(const std::vector<GifRung>& rungs, std::size_t tried, double bytes,
                                     std::uintmax_t limit);

}  // namespace overbend::film
