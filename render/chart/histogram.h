// How often a figure came out where: columns over its values, with the tolerance and the drawing's value.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/chart/frame.h"

namespace overbend::chart {

struct Histogram {
    std::string title;
    std::string words;            // "angle of 'lip', deg"
    std::vector<double> values;   // two at least, finite
    std::optional<double> drawn;  // with `allowed` either way, > 0, where it is judged
    std::optional<double> allowed;
    std::vector<std::string> remarks;
};

// Edges of columns of one width, as many as suit so many values: the rule of D. Freedman and P. Diaconis, 8
// to 60 of them. All values lie within.
std::vector<double> column_edges(const std::vector<double>& values);

// Throws OutOfRange: too few values, or one that is not finite.
picture::DrawingList draw_histogram(const Histogram& chart, const ChartSize& size, picture::Theme theme);

}  // namespace overbend::chart
