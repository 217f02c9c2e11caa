// How much a size without a tolerance of its own may be off, either way: ISO 2768-1:1989, class m (medium).
//
// Source  its tables 1 to 3, from memory.
// Units   mm, rad.

#pragma once

namespace overbend::plan {

// 0 where the standard has none (below 0.5 mm, above 4 m).
double length_tolerance(double length);
double radius_tolerance(double radius);      // of external radii and chamfers
double angle_tolerance(double shorter_leg);  // rad, by the length of the shorter leg

}  // namespace overbend::plan
