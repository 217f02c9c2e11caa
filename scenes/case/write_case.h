// Writes a case as the TOML text that read_case reads back to the same case: everything is there, in the
// order and the style of the example cases.

#pragma once

#include <string>

#include "scenes/case/case.h"

namespace overbend::scenes {

// head  comment lines on top, without their "# "; may be empty. A material card that came from a file is
// named by its whole path, so that the text may be put anywhere.
std::string write_case(const Case& c, const std::string& head);

}  // namespace overbend::scenes
