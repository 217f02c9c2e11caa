// Rules about a V bend and its tools, by geometry: limits set by a flange, a punch and a groove.
//
// These stop a job: what they report cannot be pressed. The strip is taken as flats that are tangent to the
// bend, which follows the nose; the simulated stroke knows better, and where there is one it decides.
//
// Units  mm, rad. Press coordinates as in sim/tool/tool_set.h.

#pragma once

#include <optional>

#include "sim/finding.h"
#include "sim/material/card.h"
#include "sim/tool/arc_outline.h"
#include "sim/tool/die.h"
#include "sim/tool/punch.h"

namespace overbend::plan {

// ---- the flange stays on its shoulder

struct FlangeOnDie {
    double die_opening = 0.0;      // between the shoulder arcs' centres
    double shoulder_radius = 0.0;  // mm
    double thickness = 0.0;        // mm
    double inside_radius = 0.0;    // mm, of the bend
    double bend_angle = 0.0;       // rad, under load, > 0 and < pi
};

// The blank that a flange needs from its bend line to its end, so that it rests on the shoulder's arc from
// the first touch to the end of the stroke. With both flanges leaning by a, half of the bend's angle up to
// then, the strip's lower surface, tangent to the bend's outer arc (r + s) and to the shoulder's, touches the
// shoulder (V/2 - (R + r + s) sin a) / cos a from the bend's end, which lies (r + s/2) a from the bend line.
// The maximum over the stroke counts.
double flange_needed(const FlangeOnDie& f);

// "flange on the die": from_line, what there is of it.
std::optional<Finding> slips_off(double from_line, const FlangeOnDie& f);

// ---- the angle can be reached

// "nose in the groove": tool::check_pair refuses the pair. The limit is the largest outer radius that goes
// in.
std::optional<Finding> does_not_go_in(const tool::VeePunch& punch, const tool::VeeFace& face,
                                      double thickness);

// The bend angle under load for a drawn one, from pure bending at the drawing's radius: the strip is bent by
// a moment alone, until it springs back to the drawing. A V bend springs back somewhat more, by what its
// flanges bend between nose and shoulders. hold of the width, see sim/material/layer_law.h. Throws NotSolved.
double loaded_angle(const material::Card& card, double thickness, double inside_radius, double bend_angle,
                    double hold);

// "angle of the tools": the loaded angle against tool::largest_bend_angle.
enum class Loaded { estimated, simulated };
std::optional<Finding> angle_out_of_reach(double loaded, double largest, Loaded how);

// ---- a flange beside the punch

// A bend with another one beside it, made before and in the same sense: its flange comes up beside the punch.
struct ReturnFlange {
    double bend_angle = 0.0;     // rad, under load, of the bend that is pressed, > 0
    double inside_radius = 0.0;  // of it
    double base = 0.0;           // flat between the two bends, between their tangent points
    double other_angle = 0.0;    // rad, of the bend made before, > 0
    double other_radius = 0.0;   // its inside radius
    double flange = 0.0;         // straight length beyond it
};

// The longest straight flange that passes the punch at every angle of the stroke, to `longest` (mm) at most.
// punch  as it stands, its nose's lowest point at the origin; the flange comes up at its right (x > 0):
//        mirror it for the left. nose_radius: round which the strip lies.
double longest_return(const tool::ArcOutline& punch, double nose_radius, const ReturnFlange& f,
                      double longest);

// "return flange": f.flange against it.
std::optional<Finding> flange_hits_punch(const tool::ArcOutline& punch, double nose_radius,
                                         const ReturnFlange& f);

}  // namespace overbend::plan
