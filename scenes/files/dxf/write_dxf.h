// A drawing as the text of a DXF file (version 2000, ASCII), in millimetres ($INSUNITS 4).
//
// Numbers have the fewest digits that read back exactly, so nothing is rounded; they do not depend on the
// locale. The same drawing gives the same bytes.

#pragma once

#include <string>

#include "scenes/files/dxf/dxf_drawing.h"

namespace overbend::files {

// Throws std::invalid_argument: a number that is not finite, an entity on an unknown layer.
std::string dxf_text(const DxfDrawing& drawing);

}  // namespace overbend::files
