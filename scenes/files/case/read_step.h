// Reads the [[step]] tables of a case file.

#pragma once

#include <vector>

#include "scenes/files/case/case.h"

namespace overbend::files {

class StrictTable;

// job  part, tools and thickness have been read; `before` are the steps already read
// Throws CaseError, also for tools that do not go together or cannot work on this strip.
Step read_step(const StrictTable& table, const Case& job, const std::vector<Step>& before);

}  // namespace overbend::files
