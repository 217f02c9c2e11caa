// A case's tools in words, as they are asked for in the shop.

#pragma once

#include <string>

#include "scenes/files/case/case.h"

namespace overbend::documents {

// "wedge 50 deg, nose radius 1.2 mm"; for a die with two faces, both.
std::string figures_words(const files::Tool& tool);

// "'two-way block', face 2": as a step uses it.
std::string die_words(const files::Case& c, const files::Step& step);

// "down to 90 deg free, as drawn"
std::string stop_words(const files::Case& c, const files::Step& step);

}  // namespace overbend::documents
