// Tools, blank and part as DXF drawings for wire erosion and laser, true to size in mm, nothing rounded.
//
// Layers  CONTOUR (what is cut), CUT_OUT (holes and slots), BEND_UP and BEND_DOWN (bend lines, not to be
// cut),
//         CENTRE_LINE, TEXT (what it is).

#pragma once

#include "scenes/case/case.h"
#include "scenes/dxf/dxf_drawing.h"
#include "scenes/process/drawing.h"

namespace overbend::scenes {

DxfDrawing tool_dxf(const Tool& tool);
DxfDrawing blank_dxf(const Case& c, const Blank& blank);
DxfDrawing part_dxf(const Case& c);

}  // namespace overbend::scenes
