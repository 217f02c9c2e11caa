// Controls as they are seen, against golden pictures of them (tests/window/golden;
// tests/picture/golden_picture.h).

#pragma once

#include <string>

#include "tests/window/script.h"

namespace overbend::tests {

void compare_golden(Script& user, const std::string& control, const std::string& name);

}  // namespace overbend::tests
