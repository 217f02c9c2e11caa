// The lines of a drawing: how wide they are on paper, and black.

#pragma once

#include "render/picture/palette.h"

namespace overbend::drawing {

constexpr double thick = 0.5, thin = 0.25;  // mm
constexpr picture::Colour black{0.0, 0.0, 0.0, 1.0};

}  // namespace overbend::drawing
