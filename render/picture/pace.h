// How the instants of a stroke follow one another when it is played.

#pragma once

#include <vector>

#include "sim/stroke/recording.h"

namespace overbend::picture {

// From 0 to 1, with zero speed at both ends; constant outside.
double eased(double part);

// How far it is from one recorded state to each up to another, rising from 0: the punch's travel and the
// strip's greatest shift between them, each by its weight. Pressing is spread over the punch's travel,
// springing back over the strip's own movement, so that it is seen and not only the punch's leaving.
std::vector<double> way_between(const stroke::Recording& recording, int first, int last, double by_travel,
                                double by_shift);

}  // namespace overbend::picture
