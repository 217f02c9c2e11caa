// Angles are rad inside, degrees in files and on screen: 90.0 * degree is read in, angle / degree is shown.

#pragma once

namespace overbend {

constexpr double pi = 3.14159265358979323846;
constexpr double degree = pi / 180.0;  // rad

}  // namespace overbend
