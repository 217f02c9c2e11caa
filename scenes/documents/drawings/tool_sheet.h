// A tool in section with its dimensions.

#pragma once

#include "render/drawing/drawing_sheet.h"
#include "scenes/case/case.h"
#include "scenes/drawings/general_tolerance.h"

namespace overbend::scenes {

// "V punch", "channel die": for people.
const char* kind_name(const Tool& tool);

// Without title and numbers. What gives its shape is measured: angles, openings, offsets, heights; and every
// radius of its outline, equal ones once. Two-way dies stand with face 1 up.
render::DrawingSheet tool_sheet(const Tool& tool, Tolerances tolerances);

}  // namespace overbend::scenes
