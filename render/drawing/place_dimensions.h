// Gives dimensions their places on paper: dimension lines with arrows and extension lines, leaders of radii,
// arcs of angles, so that no words lie on lines or other words and no lines run along one another.
//
// Every dimension has a list of candidate positions. Of the allowed ones, the one with the fewest crossings,
// nearest to what it measures, is used. A dimension without an allowed position goes first in the next round.
//
// Units  mm; on paper y down.

#pragma once

#include <vector>

#include "render/drawing/dimension.h"
#include "render/drawing/ink.h"

namespace overbend::drawing {

// From the thing to the paper.
struct OnPaper {
    picture::Point origin = picture::Point::Zero();  // where the thing's own origin comes
    double scale = 1.0;                              // mm on paper a mm
    picture::Point operator()(const Vec2& p) const { return origin + scale * picture::Point(p.x(), -p.y()); }
};

struct Placing {
    Ink ink;
    double effort = 0.0;  // its penalty by itself
};

// box: of the outline, on paper.
std::vector<Placing> linear_ways(const Dimension& dimension, const OnPaper& paper, const picture::Rect& box);
std::vector<Placing> radius_ways(const Dimension& dimension, const OnPaper& paper);
std::vector<Placing> angle_ways(const Dimension& dimension, const OnPaper& paper);

// All marks of one side at once; none when the row has no room in the area.
std::vector<Ink> mark_row(const std::vector<Dimension>& marks, const OnPaper& paper, const picture::Rect& box,
                          const picture::Rect& area);

struct Placed {
    Ink ink;                   // the dimensions alone
    std::vector<int> missing;  // indices of those that do not fit
};
// there: outline and centre lines on paper, which the dimensions must avoid.
Placed place_dimensions(const std::vector<Dimension>& dimensions, const OnPaper& paper, const Ink& there,
                        const picture::Rect& box, const picture::Rect& area);

}  // namespace overbend::drawing
