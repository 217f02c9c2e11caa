// The punch's force over its travel through a stroke: pressing, returning, and the limits of press and tools.
//
// A limit far above the curve would press it flat against the axis: above 2.5 times the peak it is stated in
// words below the chart, not drawn.
//
// Units  mm from first touch, kN on the strip's whole width.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/chart/frame.h"
#include "render/picture/shown_job.h"

namespace overbend::chart {

struct ForcePoint {
    double travel = 0.0;  // mm
    double force = 0.0;   // kN
};

using picture::ForceLimit;

// A limit far above the peak (kN) is stated in words, not drawn.
bool is_drawn(const ForceLimit& limit, double peak);
std::string limit_words(const ForceLimit& limit);

struct ForceTravel {
    std::string title;
    std::vector<ForcePoint> loading;  // to the stop, two points at least
    std::vector<ForcePoint> going_back;
    std::vector<ForceLimit> limits;
    std::optional<ForcePoint> now;  // a dot, where the stroke is
};

// The greatest force; a little at least, so that there is a scale.
ForcePoint peak_of(const ForceTravel& chart);

// The limits that are stated in words, one sentence each.
std::vector<std::string> limits_above(const ForceTravel& chart);

// Of a stroke of the job, with its title and limits.
ForceTravel force_travel(const picture::ShownJob& job, const picture::ShownStroke& stroke);

// Of a stroke on a strip of this width. instant: see stage.h; without it no dot.
ForceTravel force_travel(const stroke::Recording& recording, double strip_width);
ForceTravel force_travel(const stroke::Recording& recording, double strip_width, double instant);

// Throws OutOfRange: fewer than two points; the size.
picture::DrawingList draw_force_travel(const ForceTravel& chart, const ChartSize& size, picture::Theme theme);

}  // namespace overbend::chart
