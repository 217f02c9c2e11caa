// The lines within a strip's section: what has never yielded, and what is as long as it was in the blank.
//
// Units  mm; heights over the mid-line.

#pragma once

#include <optional>

#include "render/picture/strip_shape.h"

namespace overbend::picture {

// From the lower to the upper end of the layers that have never yielded, at a station; none when all have.
// The front runs between the last layer without plastic strain and the first one with it, where the strain of
// the next layers, extrapolated in a straight line, becomes zero.
struct Core {
    double low = 0.0;
    double high = 0.0;
    bool whole = false;  // nothing has yielded: the core is the section
};
std::optional<Core> elastic_core(const stroke::Recording& recording, const stroke::State& state,
                                 const Station& at);

// Height of the fibre that is as long as it was in the blank: lambda^2 - 2 z kappa = 1. None where the strip
// is nearly straight (|kappa| thickness < 0.01), or where no fibre of the section is.
std::optional<double> neutral_height(const stroke::Recording& recording, const stroke::State& state,
                                     const Station& at);

}  // namespace overbend::picture
