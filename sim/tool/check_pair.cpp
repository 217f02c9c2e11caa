// Whether a punch and a die can work together; declared, with the rules, in die.h.

#include <algorithm>
#include <cmath>

#include "sim/errors.h"
#include "sim/tool/die.h"
#include "sim/tool/figures.h"
#include "sim/tool/punch.h"
#include "sim/units.h"

namespace overbend::tool {

namespace {

constexpr double rounding = 1e-9;  // mm and rad, of figures that are meant to be equal

}  // namespace

double largest_bend_angle(const VeePunch& punch, const VeeFace& face, double thickness) {
    const double between_centres = punch.nose_radius + thickness + face.shoulder_radius;
    const double half_on_flanks = 0.5 * (pi - face.angle);
    const double half_pinched = std::asin(std::min(0.5 * face.die_opening / between_centres, 1.0));
    return 2.0 * std::min(half_on_flanks, half_pinched);
}

void check_pair(const VeePunch& punch, const VeeFace& face, double thickness) {
    require_above_zero("thickness", thickness);
    if (punch.angle > face.angle + rounding) {
        throw OutOfRange("punch angle",
                         deg(punch.angle) + " is wider than the groove, which has " + deg(face.angle),
                         "use a punch of at most " + deg(face.angle));
    }
    const double outer_radius = punch.nose_radius + thickness;
    const double between_shoulders = 0.5 * face.die_opening;
    const double flanks_first = between_shoulders / std::cos(0.5 * face.angle) - face.shoulder_radius;
    const double largest_outer = std::max(between_shoulders, flanks_first);
    if (outer_radius <= largest_outer + rounding) return;
    const double largest_nose = largest_outer - thickness;
    throw OutOfRange("nose radius",
                     mm(punch.nose_radius) + " with a strip of " + mm(thickness) + " round it is " +
                         mm(2.0 * outer_radius) + " wide and does not fit in an opening of " +
                         mm(face.die_opening),
                     largest_nose > 0.0 ? "use a nose of at most " + mm(largest_nose) + " or a wider groove"
                                        : "use a groove with an opening of more than " + mm(2.0 * thickness));
}

namespace {

// The largest concave radius opposite a convex one that leaves a strip its thickness between closed faces.
double largest_root(double convex_radius, double clearance, double angle, double thickness) {
    const double cos_half = std::cos(0.5 * angle);
    return convex_radius + (clearance - thickness * cos_half) / (1.0 - cos_half);
}

void check_root(const char* name, double root_radius, double largest) {
    if (root_radius <= largest + rounding) return;
    throw OutOfRange(name, mm(root_radius) + " pinches the strip against the corner of the other tool",
                     "at most " + mm(largest) + " fits");
}

}  // namespace

void check_pair(const OffsetPunch& punch, const OffsetDie& die, double thickness) {
    require_above_zero("thickness", thickness);
    constexpr double same_angle = 0.01 * degree;
    constexpr double same_offset = 1e-6;  // mm
    if (std::abs(punch.angle - die.angle) > same_angle) {
        throw OutOfRange("punch angle", deg(punch.angle) + " does not match the die's " + deg(die.angle),
                         "give both the same");
    }
    if (std::abs(punch.offset - die.offset) > same_offset) {
        throw OutOfRange("offset",
                         "the punch's " + mm(punch.offset) + " does not match the die's " + mm(die.offset),
                         "give both the same");
    }
    if (punch.clearance < thickness - rounding) {
        throw OutOfRange("clearance", mm(punch.clearance) + " is less than the strip's thickness",
                         "give at least " + mm(thickness));
    }
    check_root("root radius of the die", die.root_radius,
               largest_root(punch.nose_radius, punch.clearance, die.angle, thickness));
    check_root("root radius of the punch", punch.root_radius,
               largest_root(die.shoulder_radius, punch.clearance, die.angle, thickness));
}

void check_pair(const ChannelPunch& punch, const ChannelDie& die, double thickness) {
    require_above_zero("thickness", thickness);
    const double beside = 0.5 * (die.die_opening - punch.width);
    if (beside >= thickness - rounding) return;
    const double widest = die.die_opening - 2.0 * thickness;
    throw OutOfRange("punch width",
                     mm(punch.width) + " leaves " + mm(beside) + " on either side in an opening of " +
                         mm(die.die_opening) + ", less than the strip's thickness",
                     widest > 0.0 ? "use a foot of at most " + mm(widest)
                                  : "use an opening of more than " + mm(2.0 * thickness));
}

}  // namespace overbend::tool
