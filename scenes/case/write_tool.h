// A tool as a [[tool]] of a case file. For scenes/case only.

#pragma once

#include "scenes/case/case.h"
#include "scenes/case/toml_text.h"

namespace overbend::scenes {

// All its keys, none left out. Wound springs are written as the rate they have.
void write_tool(const Tool& tool, Lines& lines);

}  // namespace overbend::scenes
