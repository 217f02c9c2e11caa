// Files are written whole or not at all: no reader ever sees half of one.

#pragma once

#include <filesystem>
#include <string>

namespace overbend::files {

// Writes `text`, byte for byte, to a temporary file beside `path` and renames it there: whatever goes wrong,
// `path` holds all of it or what it held before. The folder must exist.
//
// Throws std::runtime_error with the path and the reason.
void write_whole(const std::filesystem::path& path, const std::string& text);

}  // namespace overbend::files
