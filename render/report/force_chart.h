// Force over travel of one stroke as an SVG element for a page whose player moves a dot on it.
//
// The element carries where its axes lie, in its own pixels: data-left and data-from (x of travel `from`),
// data-per-mm, data-bottom (y of no force), data-per-n.

#pragma once

#include <string>
#include <vector>

#include "render/chart/force_travel.h"

namespace overbend::report {

struct ForceAtTravel {
    double travel = 0.0;  // mm
    double force = 0.0;   // N, of the whole strip
};

struct ForceCurve {
    std::vector<ForceAtTravel> points;      // down and back again, two at least
    std::size_t turn = 0;                   // index of the stop: what follows is the way back
    std::vector<chart::ForceLimit> limits;  // what press and tools bear
    std::string label;                      // what it shows, for those who do not see it
};

// The limits too far above the curve for the chart, one sentence each.
std::vector<std::string> limits_above(const ForceCurve& curve);

// Throws std::invalid_argument: fewer than two points.
std::string force_chart(const ForceCurve& curve);

}  // namespace overbend::report
