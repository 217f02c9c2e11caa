// Reads the table [cost].

#pragma once

#include <optional>

#include "scenes/files/case/case.h"

namespace overbend::files {

class StrictTable;

// The press, if there is one, must have been read: its price and power hold where the table gives none.
// Throws CaseError.
std::optional<shop::CostRates> read_cost(const StrictTable& top, const Case& job);

// What holds where a case says nothing of costs.
shop::CostRates usual_rates(const Case& job);

}  // namespace overbend::files
