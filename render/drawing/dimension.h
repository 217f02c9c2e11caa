// What a drawing measures: lengths, radii and angles, as plain data, before anything has a place on paper.
//
// Units  mm and rad of the thing that is drawn, y up.

#pragma once

#include <string>
#include <vector>

#include "sim/tool/arc_outline.h"

namespace overbend::drawing {

using tool::Vec2;

enum class Measure { across, upright, along, radius, angle, mark };
enum class Beside { above, below, left, right };

struct Dimension {
    Measure measure = Measure::across;
    std::string words;  // "8", "2x R1", "86 deg" with its sign

    // A mark: words at the end of a line that leads away from `from`, above or below. All marks of a side
    // stand in one row, spread so that their words do not touch; for distances from one end, and for numbers.
    // Lengths: between these, across (x alone), upright (y alone) or along the line through both.
    Vec2 from = Vec2::Zero(), to = Vec2::Zero();
    Beside beside = Beside::above;  // preferred side of the dimension line; the other side is allowed
    double half_thickness = 0.0;    // along: of the strip whose mid-line from and to lie on
    std::vector<double> lanes;      // x (upright) or y (across) within the outline, tried first

    // Radii: the arc's centre, radius, and directions from the centre; whether the solid is inside.
    Vec2 centre = Vec2::Zero();
    double radius = 0.0;
    double start = 0.0, sweep = 0.0;  // rad, counter-clockwise; of an angle: from one leg to the other
    bool convex = true;

    // Angles: `centre` is the vertex; the legs' straight edges lie this far along the directions start and
    // start + sweep from it, 0 and 0 where there is none.
    double first_from = 0.0, first_to = 0.0;
    double second_from = 0.0, second_to = 0.0;
};

}  // namespace overbend::drawing
