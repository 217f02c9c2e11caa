// Where the sizes of tools must lie, and those that a case file leaves out, which proposed tools have too.
// For the kinds alone.
//
// Units  mm, rad; ranges as in a file.

#pragma once

#include <algorithm>

#include "scenes/files/case/fields.h"

namespace overbend::files {

// No press holds larger tools. What fits with what is the makers' business.
constexpr Range size = above_to(0.0, 2000.0);         // mm
constexpr Range size_or_none = from_to(0.0, 2000.0);  // mm
constexpr Range coordinate = from_to(-2000.0, 2000.0);
constexpr Range groove_angle = above_below(0.0, 180.0);  // deg
constexpr Range offset_angle = above_to(0.0, 90.0);      // deg

inline void shoulder(Fields& f, double& radius) {
    f.number({"shoulder_radius_mm", "2.0", "Radius of the shoulders"}, size, radius);
}

// ---- all: common practice, no source

constexpr double usual_punch_height = 60.0;
inline double usual_shank_width(double nose_radius) {
    return std::max(12.0, 2.0 * nose_radius + 2.0);
}
// Of a die's block, with top face beside the shoulders.
inline double usual_die_width(double opening, double shoulder_radius) {
    return opening + 4.0 * shoulder_radius + 16.0;
}
inline void die_width(Fields& f, const char* example, double& width, double usual) {
    f.number_or({"width_mm", example, "Width of the block"}, size, width,
                {usual, "the opening plus 4 shoulder radii plus 16"});
}
// groove_depths  of all its grooves together
inline double usual_die_height(double groove_depths) {
    return 1.5 * groove_depths + 25.0;
}

}  // namespace overbend::files
