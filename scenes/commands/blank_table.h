// The flat pattern as a table for reading, and as JSON.

#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "scenes/process/flat_pattern.h"

namespace overbend::program {

void print_pattern(const scenes::Case& c, const scenes::FlatPattern& pattern);
nlohmann::ordered_json pattern_json(const scenes::Case& c, const scenes::FlatPattern& pattern);

}  // namespace overbend::program
