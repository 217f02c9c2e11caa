// A V bend with contact held against finite elements: what was bent there, bent here, and the rows of it.

#pragma once

#include <string>

#include "tests/outside/vee_deck.h"

namespace overbend::tests {

// Bends it here, with flanges of 0.8 die openings plus half a thickness and the default mesh, and compares
// springback, included angles and forces. Allowed springback the larger of 0.15 degree and 6 per cent, aim
// 0.1 and 3; peak and end force 6 per cent, aim 3; angles at the same travel 2.2 degrees, aim 0.7.
// springback: theirs, degrees.
void compare_vee_bend(const std::string& group, const std::string& source, const VeeDeckBend& bend,
                      const VeeDeckResult& theirs, double springback);

}  // namespace overbend::tests
