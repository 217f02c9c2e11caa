// Force over travel of one stroke as an SVG element for a page whose player moves a dot on it.
//
// The element carries where its axes lie, in its own pixels: data-left and data-from (x of travel `from`),
// data-per-mm, data-bottom (y of no force), data-per-n.

#pragma once

#include <string>

#include "render/chart/force_travel.h"

namespace overbend::report {

// The chart's title is the label for those who do not see it.
// Throws std::invalid_argument: fewer than two points on the way down.
std::string force_chart(const chart::ForceTravel& chart);

}  // namespace overbend::report
