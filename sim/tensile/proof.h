// Proof stress: where the record meets a line parallel to its elastic part.
//
// Source  ISO 6892-1 (from memory): Rp0.2 is the stress at which the record meets the line of the elastic
//         part's slope moved by 0.2 per cent of the gauge length.

#pragma once

#include <optional>

#include "sim/tensile/record.h"

namespace overbend::tensile {

// off: of the scatter of the points near it, or of the gap between two coarse ones; not of the slope.
// None: the record ends before.
std::optional<Figure> proof_stress(const Record& record, double slope, double strain_at_zero, double offset);

}  // namespace overbend::tensile
