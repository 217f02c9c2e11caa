// The hoop stress through a bend's thickness, loaded and free: the section stands upright as it lies in the
// press, compression to the left of 0 and tension to the right.
//
// Units  mm from the mid-line, MPa.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/chart/bent_section.h"
#include "render/chart/frame.h"
#include "render/picture/shown_job.h"

namespace overbend::chart {

struct StressThroughThickness {
    std::string title;
    double blank_position = 0.0;           // mm, of the section
    double lower = 0.0, upper = 0.0;       // mm, surfaces of the bent section, lower < upper
    std::vector<LayerPoint> loaded, free;  // from the lower to the upper surface, three layers at least
    std::optional<ElasticCore> core;       // under load
};

// Of the section of greatest curvature under load between two blank positions.
StressThroughThickness stress_through_thickness(const stroke::Recording& recording, double from, double to);

// Of a bend of a stroke, with its title.
StressThroughThickness stress_through_thickness(const picture::ShownStroke& stroke,
                                                const picture::BendMark& bend);

// Throws OutOfRange: fewer than three layers, another count of them loaded than free; the size.
picture::DrawingList draw_stress_through_thickness(const StressThroughThickness& chart, const ChartSize& size,
                                                   picture::Theme theme);

}  // namespace overbend::chart
