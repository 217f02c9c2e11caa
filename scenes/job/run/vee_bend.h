// One V bend of one flat strip, without a case: air bending, bottoming and coining. The springback bench, and
// the subject of most checks.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include <optional>

#include "scenes/job/run/strip_stroke.h"

namespace overbend::job {

struct VeeBend : StripOptions {
    double die_opening = 8.0;  // between the shoulder arcs' centres
    double shoulder_radius = 1.0;
    double nose_radius = 1.0;
    std::optional<double> die_angle;  // included angle of the groove; absent: open below the shoulders
    double bottom_radius = 0.4;       // of the groove
    double punch_angle = 0.5235987755982988;  // included angle of the wedge; 30 degrees
    std::optional<double> flange;             // each half's length; absent: two die openings
    std::optional<double> left_flange;        // of the left half, where it has another length
    double off_centre = 0.0;                  // offset of the strip's middle to the right of the punch's axis
};

// Below an open die's shoulders there is room for so many die openings of travel; long before, a strip of
// ordinary length has slipped through.
constexpr double open_die_travel = 2.5;

// Throws OutOfRange for tools that cannot be, or that do not fit one another.
StripStroke vee_stroke(const VeeBend& bend);

// What comes of it; see BendReading.
struct VeeResult {
    stroke::StrokeResult stroke;
    double loaded = 0.0;  // bend angle, rad
    double free = 0.0;
    double inside_radius_loaded = 0.0;  // least radius of the inner surface, mean over half a thickness
    double inside_radius_free = 0.0;
};
VeeResult bend_vee(const VeeBend& bend, const stroke::Stop& stop, const stroke::StrokeOptions& options);

}  // namespace overbend::job
