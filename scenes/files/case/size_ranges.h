// Where the sizes of tools must lie. For the kinds of tools alone.

#pragma once

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

}  // namespace overbend::files
