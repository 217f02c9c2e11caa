// The elastic part of a record: the straight line in it, and how well it is known.
//
// Windows of stress between 5 and 80 per cent of the proof stress are tried; each is fitted by a line. Of
// them the one counts whose slope is known best: its scatter, and what a curve instead of the line makes of
// it. Where the strain runs back more often than the stress the strain is what scatters, and is fitted over
// the stress; else the stress over the strain; where neither does clearly more often, the geometric mean of
// both slopes. Loading and unloading below the window's upper end count alike.
//
// Units  MPa; strain without unit.
// Source ISO 6892-1, annex on the modulus (from memory): the elastic part lies between lower and upper bounds
//        of stress that are to be chosen and reported, its scatter is that of the regression.

#pragma once

#include "sim/tensile/record.h"

namespace overbend::tensile {

struct Elastic {
    Figure slope;              // MPa; off: two standard deviations, with the spread between windows
    double strain_mean = 0.0;  // the line goes through these: a steeper one turns about them
    double stress_mean = 0.0;
    double from = 0.0, to = 0.0;  // stresses of the window, MPa
    std::size_t points = 0;

    // Where a line of this slope has no stress.
    double strain_at_zero(double of_slope) const { return strain_mean - stress_mean / of_slope; }
};

// Throws BadRecord: no elastic part, or fewer than five points in it.
Elastic find_elastic(const Record& record);

}  // namespace overbend::tensile
