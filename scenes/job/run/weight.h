// What a strip weighs.

#pragma once

#include "sim/material/card.h"

namespace overbend::job {

// N per mm2 of the strip's face; thickness in mm. Throws OutOfRange when the card has no density.
double weight_of(const material::Card& card, double thickness);

}  // namespace overbend::job
