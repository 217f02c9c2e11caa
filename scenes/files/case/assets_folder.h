// Where the material cards and the like are kept.

#pragma once

#include <filesystem>

namespace overbend::files {

// The first of these that is there: what the environment variable OVERBEND_ASSETS names; ../../assets from
// the executable (a build folder in the source tree); ../share/overbend from it (installed); the source tree
// that was compiled.
// Throws CaseError when OVERBEND_ASSETS names no folder, or when none of them is there.
std::filesystem::path assets_folder();

}  // namespace overbend::files
