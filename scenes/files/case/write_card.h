// Writes the entries of a material card, as they stand in a file of its own or in a case's table [material].

#pragma once

#include <string>
#include <utility>
#include <vector>

#include "sim/material/card.h"

namespace overbend::files {

// table    "material" for a case's table, "" for a file; what heads its table of sources goes by it
// sources  where single numbers come from, by their key
std::string write_card_entries(const material::Card& card, const std::string& table,
                               const std::vector<std::pair<std::string, std::string>>& sources);

}  // namespace overbend::files
