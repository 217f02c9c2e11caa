// The blank from above: contour, cut-outs, bend lines with their allowances.
//
// Units  mm, rad; from the blank's left end and lower edge.

#pragma once

#include "render/drawing/drawing_sheet.h"
#include "render/drawing/sizes_in_words.h"
#include "scenes/files/case/case.h"
#include "scenes/job/run/flat_pattern.h"

namespace overbend::documents {

// Contour and cut-outs, each closed, lines and arcs; the first is the contour.
std::vector<std::vector<tool::Piece>> blank_outlines(const files::Case& c, const job::Blank& blank);

// Without title and numbers.
drawing::DrawingSheet blank_sheet(const files::Case& c, const job::FlatPattern& pattern,
                                  drawing::Tolerances tolerances);

}  // namespace overbend::documents
