#include "sim/tool/radius_tools.h"

#include <cmath>

#include "sim/errors.h"
#include "sim/tool/figures.h"

namespace overbend::tool {

namespace {

constexpr double rounding_off = 1e-9;  // mm and rad, of figures that are meant to be equal

void check(const RadiusDie& die) {
    require_above_zero("groove radius", die.groove_radius);
    require_above_zero("die opening", die.die_opening);
    require_above_zero("shoulder radius", die.shoulder_radius);
    require_above_zero("die width", die.width);
    require_above_zero("die height", die.height);
    const double widest = 2.0 * (die.groove_radius + die.shoulder_radius);
    if (die.die_opening >= widest)
        throw OutOfRange("die opening",
                         mm(die.die_opening) + " is wider than a groove of " + mm(die.groove_radius) +
                             " with its shoulders",
                         "give less than " + mm(widest));
    if (die.width <= die.die_opening)
        throw OutOfRange("die width", mm(die.width) + " leaves no top face beside the shoulders",
                         "give more than " + mm(die.die_opening));
    const double depth = groove_depth(die);
    if (die.height <= depth)
        throw OutOfRange("die height",
                         mm(die.height) + " is less than the groove, which is " + mm(depth) + " deep",
                         "give more than " + mm(depth));
}

// From the nose to the ends of its arc, round its centre.
double half_nose(const RadiusPunch& punch) {
    return std::asin(std::min(1.0, 0.5 * punch.width / punch.nose_radius));
}

}  // namespace

double half_groove(const RadiusDie& die) {
    return std::asin(0.5 * die.die_opening / (die.groove_radius + die.shoulder_radius));
}

double groove_depth(const RadiusDie& die) {
    return (die.groove_radius + die.shoulder_radius) * (1.0 - std::cos(half_groove(die)));
}

ArcOutline make_outline(const RadiusDie& die) {
    check(die);
    const double side = 0.5 * die.width, edge = 0.5 * die.die_opening, turn = half_groove(die);
    // the groove's arc ends on the line of both centres
    const Vec2 end(die.groove_radius * std::sin(turn), -die.shoulder_radius * (1.0 - std::cos(turn)));
    const double shoulder = std::tan(0.25 * turn), groove = -std::tan(0.5 * turn);
    return from_points({{{side, 0.0}, 0.0, 0.0},
                        {{edge, 0.0}, 0.0, shoulder},
                        {end, 0.0, groove},
                        {{-end.x(), end.y()}, 0.0, shoulder},
                        {{-edge, 0.0}, 0.0, 0.0},
                        {{-side, 0.0}, 0.0, 0.0},
                        {{-side, -die.height}, 0.0, 0.0},
                        {{side, -die.height}, 0.0, 0.0}});
}

ArcOutline make_outline(const RadiusPunch& punch) {
    require_above_zero("nose radius", punch.nose_radius);
    require_above_zero("punch width", punch.width);
    require_above_zero("punch height", punch.height);
    if (punch.width > 2.0 * punch.nose_radius * (1.0 + 1e-12))
        throw OutOfRange("punch width", mm(punch.width) + " is wider than its nose",
                         "give at most " + mm(2.0 * punch.nose_radius));
    const double turn = half_nose(punch), high = punch.nose_radius * (1.0 - std::cos(turn));
    if (punch.height <= high)
        throw OutOfRange("punch height", mm(punch.height) + " ends within the arc of its nose",
                         "give more than " + mm(high));
    const double side = 0.5 * punch.width;
    return from_points({{{-side, high}, 0.0, std::tan(0.5 * turn)},
                        {{side, high}, 0.0, 0.0},
                        {{side, punch.height}, 0.0, 0.0},
                        {{-side, punch.height}, 0.0, 0.0}});
}

void check_pair(const RadiusPunch& punch, const RadiusDie& die, double thickness) {
    require_above_zero("thickness", thickness);
    const double largest = die.groove_radius - thickness;
    if (punch.nose_radius > largest + rounding_off)
        throw OutOfRange("nose radius",
                         mm(punch.nose_radius) + " with a strip of " + mm(thickness) +
                             " round it does not lie in a groove of " + mm(die.groove_radius),
                         largest > 0.0 ? "take a nose of at most " + mm(largest)
                                       : "take a groove of more than " + mm(thickness));
    if (half_nose(punch) >= half_groove(die) - rounding_off) return;
    const double least = 2.0 * punch.nose_radius * std::sin(half_groove(die));
    throw OutOfRange("punch width",
                     mm(punch.width) + " is too narrow: its edges would mark the strip in this groove",
                     "give at least " + mm(least));
}

}  // namespace overbend::tool
