// A tool in section with its dimensions.

#pragma once

#include "render/drawing/drawing_sheet.h"
#include "render/drawing/sizes_in_words.h"
#include "scenes/files/case/case.h"

namespace overbend::documents {

// Without title and numbers. What gives its shape is measured: angles, openings, offsets, heights; and every
// radius of its outline, equal ones once. Two-way dies stand with face 1 up.
drawing::DrawingSheet tool_sheet(const files::Tool& tool, drawing::Tolerances tolerances);

}  // namespace overbend::documents
