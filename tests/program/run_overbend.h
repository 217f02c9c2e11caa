// Runs the built program as a user does.

#pragma once

#include <string>

namespace overbend::tests {

struct Run {
    int status = -1;    // exit status; -1 when it did not end by itself
    std::string out;    // all of stdout
    std::string error;  // all of stderr
};

// options: what stands behind "overbend" on the command line, for the shell.
// before: commands of the shell that stand before the program, ended by ; or &&, such as "cd FOLDER && ".
Run run_overbend(const std::string& options, const std::string& before = "");

}  // namespace overbend::tests
