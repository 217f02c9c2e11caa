// The flat pattern as a table for reading, as JSON, and as a sheet for drawing.

#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "render/picture/flat_drawing.h"
#include "scenes/process/flat_pattern.h"

namespace overbend::program {

void print_pattern(const scenes::Case& c, const scenes::FlatPattern& pattern);
nlohmann::ordered_json pattern_json(const scenes::Case& c, const scenes::FlatPattern& pattern);
render::FlatSheet pattern_sheet(const scenes::Case& c, const scenes::FlatPattern& pattern);

}  // namespace overbend::program
