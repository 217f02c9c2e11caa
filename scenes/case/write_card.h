// A material card as the table [material] of a case file. For scenes/case only.

#pragma once

#include "scenes/case/toml_text.h"
#include "sim/material/card.h"

namespace overbend::scenes {

void write_card(const material::Card& card, Lines& lines);

}  // namespace overbend::scenes
