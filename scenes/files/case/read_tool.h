// Reads one [[tool]] of a case file.

#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include <filesystem>

#include "scenes/files/case/case.h"

namespace overbend::files {

class StrictTable;

// Throws CaseError; the outline has been made once, so that it can be.
// strip_width: mm, on which its springs press; beside: the folder that paths of its steel and its drawing
// start from.
Tool read_tool(const StrictTable& table, double strip_width, const std::filesystem::path& beside);

}  // namespace overbend::files
