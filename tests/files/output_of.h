// What another program prints, for checks of files that are read back by others.

#pragma once

#include <string>

namespace overbend::tests {

// Standard output of a command line that must end well. Throws std::runtime_error with the line when it does
// not.
std::string output_of(const std::string& command);

}  // namespace overbend::tests
