// The moment at a bend over its curvature: up to the stop, and down the unloading line to the free curvature.
//
// Units  1/mm, N mm per mm of width.

#pragma once

#include <string>
#include <vector>

#include "render/chart/bent_section.h"
#include "render/chart/frame.h"
#include "render/picture/shown_job.h"

namespace overbend::chart {

struct MomentCurve {
    std::string name;             // of the bend
    SectionPath path;             // to the stop two points at least
    double blank_position = 0.0;  // mm, of the section
};

struct MomentCurvature {
    std::string title;
    std::vector<MomentCurve> bends;  // 1 or 2
};

// Of the section of greatest curvature under load between two blank positions.
MomentCurve moment_curve(const stroke::Recording& recording, const std::string& name, double from, double to);

// Of all bends of a stroke, with its title.
MomentCurvature moment_curvature(const picture::ShownStroke& stroke);

// Throws OutOfRange: no bend, a curve of fewer than two points; the size.
picture::DrawingList draw_moment_curvature(const MomentCurvature& chart, const ChartSize& size,
                                           picture::Theme theme);

}  // namespace overbend::chart
