// Sizes of tools that a case file leaves out, which tools that are proposed have too.
//
// Units  mm, rad. All: common practice, no source.

#pragma once

#include <algorithm>

namespace overbend::files {

constexpr double usual_punch_height = 60.0;
inline double usual_shank_width(double nose_radius) {
    return std::max(12.0, 2.0 * nose_radius + 2.0);
}
// Of a die's block, with top face beside the shoulders.
inline double usual_die_width(double opening, double shoulder_radius) {
    return opening + 4.0 * shoulder_radius + 16.0;
}
// groove_depths  of all its grooves together
inline double usual_die_height(double groove_depths) {
    return 1.5 * groove_depths + 25.0;
}

}  // namespace overbend::files
