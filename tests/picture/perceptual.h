// How different two pictures look: both softened a little and compared pixel by pixel in CIELAB.
//
// Softening  [1 2 1] / 4 across and down, four times: a blur of 1.4 pixels (standard deviation), as the eye
//            blurs what it looks at from where the whole picture is seen. It takes the edge off edges that
//            another release of the painting libraries smooths otherwise.
// Distance   CIE 1976: 2 is just seen side by side, 5 at once.
// Alpha      pictures with alpha are laid on white and on black, and the larger distance counts.

#pragma once

#include <string>

#include "render/picture/painter.h"

namespace overbend::tests {

struct Difference {
    double greatest = 0.0;  // over all pixels
    double mean = 0.0;
};

// Throws std::runtime_error for pictures of different size.
Difference difference(const picture::Pixels& a, const picture::Pixels& b);

// How much two pictures may differ. Measured on the golden ones, 640 x 360: everything moved by a twentieth
// of a pixel, as other smoothing may do it, makes 2.2 to 3.9 and a mean of 0.16 to 0.19; the palest label
// moved by one pixel 5.5, a tool's colour 15 per cent greyer 5.7. On one machine the bytes are the same.
constexpr double greatest_allowed = 4.0;
constexpr double mean_allowed = 0.25;
inline bool look_alike(const Difference& d) {
    return d.greatest <= greatest_allowed && d.mean <= mean_allowed;
}

// A PNG file's pixels, with alpha where it has any. Throws std::runtime_error: not there, or no PNG.
picture::Pixels read_png(const std::string& path);

}  // namespace overbend::tests
