// Writes a tool as a case file's [[tool]] table.

#pragma once

#include <string>

#include "scenes/files/case/case.h"

namespace overbend::files {

// The table with its header. Sizes that the reader takes anyway (usual_sizes.h) are left out.
// Precondition: a tool that a case file can give; so a block has one radius at both corners, a wiping die one
// at its right.
std::string write_tool(const Tool& tool);

}  // namespace overbend::files
