// Files of the source folder as text. Tests run with the source folder as their working directory.

#pragma once

#include <string>
#include <vector>

namespace overbend::tests {

// Paths from the source folder, in alphabetical order, of the files under `folder` whose names end so.
// Throws std::runtime_error when there is no such folder or no such file: a check of nothing checks nothing.
std::vector<std::string> files_under(const std::string& folder, const std::vector<std::string>& endings);

// Throws std::runtime_error when it cannot be read.
std::string text_of(const std::string& path);

std::vector<std::string> lines_of(const std::string& text);

// "sim/tool" for "sim/tool/die.h", "" for "README.md".
std::string folder_of(const std::string& path);

}  // namespace overbend::tests
