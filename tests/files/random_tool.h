// Tools of every kind with random sizes, all of which can be made.

#pragma once

#include <random>

#include "scenes/files/case/case.h"

namespace overbend::tests {

constexpr int tool_kinds = 16;  // as Tool::shape counts them

// kind: 0 to tool_kinds - 1.
files::Tool random_tool(int kind, std::mt19937& random);

}  // namespace overbend::tests
