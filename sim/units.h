// Angles are rad inside; people and files have degrees: 90.0 * degree is a right angle, angle / degree is for reading.

#pragma once

namespace overbend {

constexpr double pi = 3.14159265358979323846;
constexpr double degree = pi / 180.0;  // rad

}  // namespace overbend
