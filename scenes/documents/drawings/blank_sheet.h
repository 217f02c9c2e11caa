// The blank from above: contour, cut-outs, bend lines with what each takes of the blank.
//
// Units  mm, rad; from the blank's left end and lower edge.

#pragma once

#include "render/drawing/drawing_sheet.h"
#include "scenes/case/case.h"
#include "scenes/drawings/general_tolerance.h"
#include "scenes/process/flat_pattern.h"

namespace overbend::scenes {

// Contour and cut-outs, each closed, lines and arcs; the first is the contour.
std::vector<std::vector<tool::Piece>> blank_outlines(const Case& c, const Blank& blank);

// Without title and numbers.
render::DrawingSheet blank_sheet(const Case& c, const FlatPattern& pattern, Tolerances tolerances);

}  // namespace overbend::scenes
