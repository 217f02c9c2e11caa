// What the checks of tools share: slow referees that look at an outline as a polygon of many short chords.
//
// Units  mm, rad.

#pragma once

#include <doctest/doctest.h>

#include <random>
#include <string>
#include <vector>

#include "sim/errors.h"
#include "sim/tool/arc_outline.h"

namespace overbend::tests {

// Area of a polygon, > 0 counter-clockwise.
double polygon_area(const std::vector<tool::Vec2>& polygon);

// Signed distance to a polygon by looking at every side; the sign is that of the winding number.
double polygon_distance(const std::vector<tool::Vec2>& polygon, const tool::Vec2& point);

// Pieces joined, counter-clockwise, area and box as the polygon of its chords has them.
void check_sound(const tool::ArcOutline& outline);

// Three to nine corners about the origin at 2 to 10 mm, some rounded, some sides bulged. May throw
// OutOfRange, where a bulge crosses another side.
tool::ArcOutline random_outline(std::mt19937& random);

// The arcs of an outline with this radius, in walking order.
std::vector<tool::Piece> arcs_of(const tool::ArcOutline& outline, double radius);

// The refusal that the action ends in; the check fails where it does not.
template <typename Action>
OutOfRange refusal(const Action& action) {
    try {
        action();
    } catch (const OutOfRange& refused) {
        CHECK_FALSE(refused.right.empty());
        return refused;
    }
    FAIL("was not refused");
    return OutOfRange("", "", "");
}

// Whether the text holds the part.
inline bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace overbend::tests
