// The table [cost] of a case as TOML.

#pragma once

#include "scenes/case/case.h"
#include "scenes/case/toml_text.h"

namespace overbend::scenes {

// The batch, and what is not as it would be without its key. The case must have costs.
Entries cost_entries(const Case& job);

}  // namespace overbend::scenes
