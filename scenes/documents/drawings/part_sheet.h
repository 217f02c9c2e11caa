// The finished part, as drawn, seen along its bend lines: its section and what is measured on it.
//
// Units  mm, rad.

#pragma once

#include "render/drawing/drawing_sheet.h"
#include "render/drawing/sizes_in_words.h"
#include "scenes/files/case/case.h"

namespace overbend::documents {

// Outline of the drawing's profile, lines and arcs, closed and counter-clockwise: the lower face from the
// left end, then the upper one back. Its mid-line begins at the origin and runs along +x. Inner arcs of no
// radius are left out. Where a hem lies on itself, faces touch.
std::vector<tool::Piece> part_outline(const files::Case& c);

// Without title and numbers.
drawing::DrawingSheet part_sheet(const files::Case& c, drawing::Tolerances tolerances);

}  // namespace overbend::documents
