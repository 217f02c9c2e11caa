// A case's tool as an outline.

#pragma once

#include "scenes/files/case/case.h"

namespace overbend::files {

// In the tool's own coordinates. face: of a V die, 1 or 2; other tools have one alone.
// Throws OutOfRange for a tool that cannot be made.
inline tool::ArcOutline tool_outline(const Tool& tool, int face) {
    return kind_of(tool.shape).outline(tool.shape, face);
}

}  // namespace overbend::files
