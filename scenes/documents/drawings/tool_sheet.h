// A tool in section with its dimensions.

#pragma once

#include "render/drawing/drawing_sheet.h"
#include "scenes/documents/drawings/general_tolerance.h"
#include "scenes/files/case/case.h"

namespace overbend::documents {

// "V punch", "channel die": for people.
const char* kind_name(const files::Tool& tool);

// Without title and numbers. What gives its shape is measured: angles, openings, offsets, heights; and every
// radius of its outline, equal ones once. Two-way dies stand with face 1 up.
drawing::DrawingSheet tool_sheet(const files::Tool& tool, Tolerances tolerances);

}  // namespace overbend::documents
