// Which of a job's steps an option names.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/case.h"

namespace overbend::commands {

// Indices of the steps that a list names, in the job's order: "all", or names and numbers with commas between
// ("lip,hook", "1,3"), or a stretch of numbers ("2-4"). Throws WrongUsage naming the option.
std::vector<int> chosen_steps(const files::Case& c, const std::string& list);

// One step by its name or number. Throws as above, naming `option`.
int step_named(const files::Case& c, const std::string& name, const std::string& option);

}  // namespace overbend::commands
