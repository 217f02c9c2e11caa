// What a part costs over the number that is made: one curve a way of making it, on logarithmic axes, with the
// batches marked at which one way becomes cheaper than another.
//
// Units  parts; money in what the words of the axis say.

#pragma once

#include <string>
#include <vector>

#include "render/chart/frame.h"

namespace overbend::chart {

struct CostPoint {
    double batch = 1.0;     // parts, > 0
    double per_part = 0.0;  // money, > 0
};

struct CostCurve {
    std::string name;
    std::vector<CostPoint> points;  // batches rising, two at least; straight on the chart between them
};

struct CostOverBatch {
    std::string title;
    std::string money;              // "EUR"
    std::vector<CostCurve> curves;  // 1 to 5
};

// Where two curves meet, in the order of the batches.
struct CostCrossing {
    int before = 0, after = 0;  // indices of curves: cheaper below this batch, and above it
    CostPoint at;
};
std::vector<CostCrossing> crossings(const std::vector<CostCurve>& curves);

// Throws OutOfRange: no curve or more than five, one with fewer than two points or with a value that is not
// above 0, batches that do not rise; a box without room.
void add_cost_over_batch(picture::DrawingList& list, const picture::Rect& box, const CostOverBatch& chart,
                         const ChartLook& look);
picture::DrawingList draw_cost_over_batch(const CostOverBatch& chart, const ChartSize& size,
                                          picture::Theme theme);

}  // namespace overbend::chart
