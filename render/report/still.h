// One recorded state of a stroke as a small SVG element, for readers whose browser runs no script: drawn from
// the same whole numbers as the player's, and in the same style.

#pragma once

#include <string>

#include "render/report/strip_track.h"

namespace overbend::report {

// label: what it shows, for those who do not see it. Throws OutOfRange: no such state.
std::string still_svg(const stroke::Recording& recording, int state, const TrackOptions& colours,
                      const std::string& label);

}  // namespace overbend::report
