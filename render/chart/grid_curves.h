// A figure over what was varied, a curve for each value of a second thing.

#pragma once

#include <string>
#include <vector>

#include "render/chart/frame.h"

namespace overbend::chart {

struct GridCurve {
    std::string name;                    // empty: it is the only one
    std::vector<picture::Point> points;  // rising across
};

struct GridCurves {
    std::string title, across_words, up_words;
    std::vector<GridCurve> curves;  // 1 to 10, with two points or more somewhere
};

// Throws OutOfRange: no curves, or too many.
picture::DrawingList draw_grid_curves(const GridCurves& chart, const ChartSize& size, picture::Theme theme);

}  // namespace overbend::chart
