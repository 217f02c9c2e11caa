// Where the drawing's bends lie on the blank.
//
// Units  mm, rad.

#pragma once

#include <vector>

#include "scenes/files/case/case.h"

namespace overbend::job {

// The blank that the case is run with. Bend lines and length by DIN 6935 unless the case gives them; of a
// given length alone the last flat takes up the difference.
struct Blank {
    double length = 0.0;
    std::vector<double> bend_line;  // middle of each bend
    std::vector<double> half_arc;   // half of each bend's allowance
    std::vector<double>
        springback_curvature;  // 1/mm, of each bend by rule; empty: not calculated
    // Middle of flat i (0 left of the first bend).
    double flat_middle(int i) const;
};
Blank make_blank(const files::Case& c);

// In grams, less the cut-outs; 0 when the card has no density.
double blank_mass(const files::Case& c, const Blank& blank);

}  // namespace overbend::job
