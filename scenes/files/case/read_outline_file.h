// Reads an outline from the DXF file that a tool names. For read_tool alone.

#pragma once

#include <filesystem>

#include "scenes/files/case/case.h"

namespace overbend::files {

class StrictTable;

// Keys file, layer, gap_mm, origin_mm, turn_deg. beside: the folder that a relative path starts from.
// Throws CaseError, of the key or, with its line, of the drawing; OutOfRange: an outline that cannot be.
OutlineTool read_outline_file(const StrictTable& table, OutlineFile file,
                              const std::filesystem::path& beside);

}  // namespace overbend::files
