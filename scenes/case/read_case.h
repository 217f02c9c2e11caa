// Reads a case file. The keys are listed, with what each means, in README.md.

#pragma once

#include <filesystem>

#include "scenes/case/case.h"
#include "scenes/case/case_error.h"

namespace overbend::scenes {

// Checks everything that can be told without pressing: keys, ranges, names, that each tool can be made and
// that the tools of each step go together with this strip.
// Throws CaseError for the first thing that is wrong, in the case file or in the card it names.
Case read_case(const std::filesystem::path& file);

}  // namespace overbend::scenes
