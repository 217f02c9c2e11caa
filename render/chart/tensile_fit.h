// A tensile test and the hardening laws fitted to it, on one sheet: the record with what is read off it, the
// laws' residuals, and the laws beyond the greatest load, where a bend uses them.
//
// Units  strains without unit on the lists, per cent on the axes; MPa.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/chart/frame.h"

namespace overbend::chart {

struct TensileMark {
    std::string words;  // "Rm 315 MPa"
    picture::Point at = picture::Point::Zero();
};

struct TensileLaw {
    std::string name;
    std::vector<picture::Point> curve;     // true stress over plastic strain, from 0 to beyond the record
    std::vector<picture::Point> residual;  // record less law over plastic strain
};

struct TensileFit {
    std::string title;
    std::vector<std::vector<picture::Point>> records;  // engineering, a test each; at least one of two points
    std::vector<TensileMark> marks;
    std::vector<picture::Point> true_curve;  // of all tests, rising in strain
    double record_end = 0.0;                 // plastic strain of the greatest load
    std::vector<TensileLaw> laws;            // 1 to 5
    std::optional<double> bend_strain;       // of the sample bend's surface
    std::vector<std::string> remarks;
};

// Throws OutOfRange: no record, no law or more than five; the size.
picture::DrawingList draw_tensile_fit(const TensileFit& chart, const ChartSize& size, picture::Theme theme);

}  // namespace overbend::chart
