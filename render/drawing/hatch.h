// Hatching of a cut section: lines at 45 degrees, broken at words.
//
// Units  mm on paper, y down.

#pragma once

#include <vector>

#include "render/drawing/ink.h"

namespace overbend::drawing {

// outline: closed polygons, solid where an odd number of them lies around; distance: between the lines, > 0.
std::vector<Line> hatched(const std::vector<std::vector<picture::Point>>& outline, double distance,
                          const std::vector<Label>& labels);

}  // namespace overbend::drawing
