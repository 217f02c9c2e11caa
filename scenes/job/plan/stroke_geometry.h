// A step of a case as geometry, for the search of the order.
//
// Units  mm, rad.

#pragma once

#include <variant>

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"
#include "sim/plan/stroke_path.h"

namespace overbend::job {

// None when the tool is of another kind.
template <class Shape>
const Shape* shape_of(const files::Case& c, int tool) {
    return std::get_if<Shape>(&c.tools[tool].shape);
}

// The case's blank, with the springback of each bend by rule: calculated once for all strokes of the search.
Blank planning_blank(const files::Case& c);

// The drawing on its blank.
plan::FoldedPart folded_part(const files::Case& c, const Blank& blank);

// How the halves move in this step, up to the drawing's angle and what it springs back by rule; its tools
// must be of one of the kinds that have a path: V, channel, offset, wiping.
plan::StrokePath stroke_path(const files::Case& c, const Blank& blank, const files::Step& step);

// In a stroke of these bends between these two tools instead of the case's.
plan::StrokePath path_between(const files::Case& c, const Blank& blank, const std::vector<int>& bends,
                              const files::Tool& punch, const files::Tool& die);

// Whether the search can plan with these tools: outlines and flat tools have no path.
bool has_path(const files::Case& c, const files::Step& step);

}  // namespace overbend::job
