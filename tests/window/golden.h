// Controls as they are seen, against pictures of them that somebody has looked at and found good
// (tests/window/golden), compared by how different they look (tests/picture/perceptual.h).
// Renewed, after a look at each, by OVERBEND_RENEW_PICTURES=1.

#pragma once

#include <string>

#include "tests/window/script.h"

namespace overbend::tests {

void compare_golden(Script& user, const std::string& control, const std::string& name);

}  // namespace overbend::tests
