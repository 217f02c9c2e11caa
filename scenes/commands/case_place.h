// Where a case that was worked out may be written: over no file that it was worked out from, and over no case
// that a person wrote.

#pragma once

#include <filesystem>
#include <string>

#include "scenes/commands/command_line.h"
#include "scenes/files/case/case.h"

namespace overbend::commands {

// What may be replaced besides the cases that this program wrote; never a file that was read.
enum class Overwrite { own, any };

void add_overwrite(Command& command, bool& overwrite);

// The first line of what is written for a command, by which it is known again.
std::string head_line(const std::string& command);

// folder/NAME.toml, or, where that has to stay, folder/NAME-ANOTHER.toml with a number where it is needed:
// then standard error says so.
std::filesystem::path place_for_case(const files::Case& read, const std::filesystem::path& folder,
                                     const std::string& name, const std::string& another,
                                     Overwrite overwrite);

// Writes the case under a comment. Throws std::runtime_error, and writes nothing, where it could not be read
// again: it names a file by a path that TOML cannot have.
void write_case_file(const std::filesystem::path& file, const files::Case& c, const std::string& comment);

}  // namespace overbend::commands
