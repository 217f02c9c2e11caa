// What the commands' options and outputs have in common.

#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "scenes/commands/command_line.h"

namespace overbend::commands {

// Checks of one number. The message says what is wrong and what would be right; nan and inf never pass.
ValueCheck from_to(double low, double high, const std::string& unit);  // low <= value <= high
ValueCheck between(double low, double high, const std::string& unit);  // low < value < high
ValueCheck whole_from_to(int low, int high);
// One of these words.
ValueCheck one_of(const std::vector<std::string>& words);

// Options that every command with numbers has.
struct Output {
    bool json = false;   // one JSON object on stdout
    bool quiet = false;  // no progress and no remarks on stderr
};
void add_output(Command& command, Output& output);  // --json and --quiet
void add_quiet(Command& command, Output& output);   // --quiet alone

// --width, for commands without a case.
void add_width(Command& command, std::optional<double>& width);

// True when progress may be shown: somebody is watching and did not ask for silence.
bool shows_progress(const Output& output);

// Prints the object, indented, and a line end.
// Throws NotSolved when a number in it is not finite: such a thing never passes for a result.
void print_json(const nlohmann::ordered_json& object);

// The lines below a heading, a dash before each; nothing when there are none.
void print_list(const char* heading, const std::vector<std::string>& lines);

// A number with so many decimals; "-0.00" is "0.00". Throws NotSolved when it is not finite.
std::string fixed(double value, int decimals);

}  // namespace overbend::commands
