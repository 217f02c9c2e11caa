// Shares of a whole, a bar each with its interval: what the scatter of a figure comes from.

#pragma once

#include <string>
#include <vector>

#include "render/chart/frame.h"

namespace overbend::chart {

struct ShareBar {
    std::string name;
    double alone = 0.0, alone_low = 0.0, alone_high = 0.0;  // 0 to 1, or a little beyond by chance
    double total = 0.0, total_low = 0.0, total_high = 0.0;
};

struct Shares {
    std::string title;
    std::vector<ShareBar> bars;  // 1 to 24
    std::vector<std::string> remarks;
};

// Throws OutOfRange: no bars or too many.
picture::DrawingList draw_shares(const Shares& chart, const ChartSize& size, picture::Theme theme);

}  // namespace overbend::chart
