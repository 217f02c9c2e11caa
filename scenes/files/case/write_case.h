// Writes a case as the text of a case file, which read_case reads back to the same Case.

#pragma once

#include <filesystem>
#include <string>

#include "scenes/files/case/case.h"

namespace overbend::files {

// comment  what stands on top, behind a # on each line; none when empty
//
// Keys that say what holds without them are left out. Numbers are written in the fewest digits that read back
// exactly; an angle reads back within 5e-15 of itself, and exactly when it came from a file. A card or rack
// in a file is named by its whole path, so the text may be put into any folder. Comments of the file that the
// case was read from are lost.
// Tools that came from the case's rack are not written: the rack is named.
// Precondition: a case that a file can give (names unique, see write_tool.h for the tools).
std::string write_case(const Case& job, const std::string& comment = "");

// The first words of the comment on a case that a command wrote; a person who goes on from it removes them.
constexpr const char* written_mark = "Written by overbend";
// Whether the file begins with that. False where it cannot be read.
bool is_written_case(const std::filesystem::path& file);

}  // namespace overbend::files
