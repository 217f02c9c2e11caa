// The flat pattern as a table for reading, and as JSON.

#pragma once

#include <nlohmann/json_fwd.hpp>

#include "scenes/job/run/flat_pattern.h"

namespace overbend::commands {

void print_pattern(const files::Case& c, const job::FlatPattern& pattern);
nlohmann::ordered_json pattern_json(const files::Case& c, const job::FlatPattern& pattern);

}  // namespace overbend::commands
