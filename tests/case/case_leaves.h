// A case taken apart into its numbers and words, to be compared field by field.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/case.h"

namespace overbend::tests {

struct Leaf {
    std::string path;  // "tools[2].faces[1].angle"
    std::string word;  // empty for a number
    double number = 0.0;
};

// Every field but the file it was read from. A new member of the structs in case.h does not compile in there
// until it is listed: so nothing is forgotten.
std::vector<Leaf> leaves_of(const files::Case& job);

// What is not the same, a line each; numbers within a relative 1e-12, and 1e-12 near 0.
std::vector<std::string> differences(const files::Case& a, const files::Case& b);

}  // namespace overbend::tests
