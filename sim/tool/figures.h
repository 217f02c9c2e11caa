// Figures for messages, and the checks that every maker makes. For sim/tool only.

#pragma once

#include <Eigen/Core>
#include <cmath>
#include <cstdio>
#include <string>

#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::tool {

// "12.5", "12.5 mm", "60 deg" (from radians), "(1.5, -2)".
inline std::string figure(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.6g", value);
    return text;
}
inline std::string mm(double length) {
    return figure(length) + " mm";
}
inline std::string deg(double angle) {
    return figure(angle / degree) + " deg";
}
inline std::string place(const Eigen::Vector2d& at) {
    return "(" + figure(at.x()) + ", " + figure(at.y()) + ") mm";
}

// These throw OutOfRange; a value that is not finite fails them too.
inline void require_above_zero(const char* name, double length) {
    if (std::isfinite(length) && length > 0.0) return;
    throw OutOfRange(name, mm(length) + " cannot be", "give more than 0 mm");
}
inline void require_not_negative(const char* name, double length) {
    if (std::isfinite(length) && length >= 0.0) return;
    throw OutOfRange(name, mm(length) + " cannot be", "give 0 mm or more");
}

// An included angle, in rad.
inline void require_between_flat_and_doubled(const char* name, double angle) {
    if (angle > 0.0 && angle < pi) return;
    throw OutOfRange(name, deg(angle) + " cannot be", "give more than 0 deg and less than 180 deg");
}

}  // namespace overbend::tool
