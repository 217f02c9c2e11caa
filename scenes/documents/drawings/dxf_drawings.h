// Tools, blank and part as DXF drawings for wire erosion and laser, true to size in mm, nothing rounded.
//
// Layers  CONTOUR (what is cut), CUT_OUT (holes and slots), BEND_UP and BEND_DOWN (bend lines, not to be
//         cut), CENTRE_LINE, TEXT (what it is).

#pragma once

#include "scenes/files/case/case.h"
#include "scenes/files/dxf/dxf_drawing.h"
#include "scenes/job/run/drawing.h"

namespace overbend::documents {

files::DxfDrawing tool_dxf(const files::Tool& tool);
files::DxfDrawing blank_dxf(const files::Case& c, const job::Blank& blank);
files::DxfDrawing part_dxf(const files::Case& c);

}  // namespace overbend::documents
