// Upper and lower yield of a metal that begins to flow with a drop of load, and the elongation there.
//
// Source  ISO 6892-1 (from memory): ReH is the stress before the first drop of the load, ReL the lowest one
//         while the metal yields, transients left out, Ae the elongation from the start of yield to the start
//         of even hardening.
// Taken   a drop of at least 0.5 per cent of the stress, and of five times the scatter (common practice, no
//         source). Yield ends where the stress leaves the level of the lower half of the yield zone, by a
//         hundredth or three times the scatter.

#pragma once

#include <optional>

#include "sim/tensile/record.h"

namespace overbend::tensile {

struct YieldPoint {
    Figure upper;              // ReH, MPa
    Figure lower;              // ReL, MPa
    Figure elongation;         // Ae, plastic part of the strain
    double level = 0.0;        // mean stress while it yields, MPa
    double last_strain = 0.0;  // total strain where even hardening begins
};

// record: elastic line through the origin, of this slope.
std::optional<YieldPoint> find_yield_point(const Record& record, double slope);

}  // namespace overbend::tensile
