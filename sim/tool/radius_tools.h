// A radius die and its punch: a bend with a large inside radius is bottomed in a groove of a stated radius.
// Own coordinates as in die.h and punch.h.
//
// Units  mm, rad. Every maker throws OutOfRange, with the reason, for a shape that cannot be.

#pragma once

#include "sim/tool/arc_outline.h"

namespace overbend::tool {

// A block with one groove, an arc from shoulder to shoulder. Each shoulder arc is tangent to the top face and
// to the groove, so that (die_opening / 2) = (groove_radius + shoulder_radius) sin(half_groove).
struct RadiusDie {
    double groove_radius = 0.0;  // > 0
    double die_opening = 0.0;    // between the shoulder arcs' centres, which is between the points where they
                                 // meet the top face; > 0, < 2 (groove_radius + shoulder_radius)
    double shoulder_radius = 0.0;  // > 0
    double width = 0.0;            // of the block, > die_opening
    double height = 0.0;           // of the block, more than the depth of the groove
};
ArcOutline make_outline(const RadiusDie& die);

// The angle from the groove's middle to where a shoulder begins: a strip in it is bent by twice that.
double half_groove(const RadiusDie& die);
// From the top face to the groove's bottom.
double groove_depth(const RadiusDie& die);

// A plate whose lower edge is an arc from side to side.
struct RadiusPunch {
    double nose_radius = 0.0;  // > 0
    double width = 0.0;        // of the plate, > 0, at most twice the nose radius
    double height = 0.0;       // from the nose to the top, more than the arc is high
};
ArcOutline make_outline(const RadiusPunch& punch);

// Whether they can work on a strip of this thickness, > 0: the nose with the strip round it goes into the
// groove, nose_radius + thickness <= groove_radius, and reaches as far round as the groove does, so that no
// edge of the punch marks the strip. Throws OutOfRange with the figures and what would fit.
void check_pair(const RadiusPunch& punch, const RadiusDie& die, double thickness);

}  // namespace overbend::tool
