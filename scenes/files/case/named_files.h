// The files that a case was read from.

#pragma once

#include <filesystem>
#include <vector>

#include "scenes/files/case/case.h"

namespace overbend::files {

// Its own file first, then the material's card, the rack, the press, the tools' steels and outlines, each
// once; those too that come with the program. A name of none that comes with the program is left out.
std::vector<std::filesystem::path> files_of(const Case& c);

}  // namespace overbend::files
