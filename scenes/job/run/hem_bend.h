// A hem: an acute V bend first, then laid flat between two flat faces. The strip carries its history from the
// first stroke into the second.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include <optional>

#include "scenes/job/run/strip_stroke.h"

namespace overbend::job {

struct HemBend : StripOptions {
    double hem = 8.0;                       // length of the strip left of the bend line, which is folded over
    std::optional<double> flange;           // right of it; absent: the hem's and four thicknesses
    double die_opening = 8.0;               // of the first stroke, between the shoulder arcs' centres
    double shoulder_radius = 1.0;           // of its die
    double nose_radius = 0.5;               // of its punch
    double first_free = 2.617993877991494;  // bend angle after the first stroke, rad; 150 degrees
};

// The first stroke, with its stop.
StripStroke hem_first_stroke(const HemBend& bend);

// The second one: the hem above, the flange lying on the flat die. bent: as the first stroke left it.
StripStroke hem_second_stroke(const HemBend& bend, const strip::StripState& bent);

// The stop of a second stroke that leaves so much between the inner faces while the strip is held, if the
// strip kept its thickness: mm, 0 for a closed hem.
stroke::Stop hem_gap_stop(const StripStroke& second, double gap);

// Greatest distance between the inner faces over the hem's outer half, less 0 where they touch. mm
double hem_gap(const HemBend& bend, const strip::StripState& strip);

// Both strokes. second stop: from the placed second stroke. Its measures: "gap_free_mm". When the first
// stroke is not solved, its outcome is the result's, without bends.
struct HemStop {
    std::optional<double> gap;    // mm between the inner faces; or
    std::optional<double> force;  // N per mm of strip width
};
StripResult bend_hem(const HemBend& bend, const HemStop& stop, const stroke::StrokeOptions& options);

}  // namespace overbend::job
