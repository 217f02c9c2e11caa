// Where the drawing's bends lie on the blank.
//
// Units  mm, rad.

#pragma once

#include <vector>

namespace overbend::files {

// The blank that a case is run with.
struct Blank {
    double length = 0.0;
    std::vector<double> bend_line;             // middle of each bend
    std::vector<double> half_arc;              // half of each bend's allowance
    std::vector<double> springback_curvature;  // 1/mm, of each bend by rule; empty: not calculated
    // Flat i, 0 left of the first bend.
    double flat_begin(int i) const { return i == 0 ? 0.0 : bend_line[i - 1] + half_arc[i - 1]; }
    double flat_end(int i) const {
        return i == static_cast<int>(bend_line.size()) ? length : bend_line[i] - half_arc[i];
    }
    double flat_middle(int i) const { return 0.5 * (flat_begin(i) + flat_end(i)); }
};

}  // namespace overbend::files
