// The table [cost] of a case as TOML.

#pragma once

#include "scenes/files/case/case.h"
#include "scenes/files/case/toml_text.h"

namespace overbend::files {

// The batch, and what is not as it would be without its key. The case must have costs.
Entries cost_entries(const Case& job);

}  // namespace overbend::files
