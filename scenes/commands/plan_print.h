// A plan as tables for people.

#pragma once

#include <filesystem>
#include <optional>

#include "scenes/job/plan/plan.h"

namespace overbend::commands {

// file  of the completed case, when there is one
void print_plan(const files::Case& c, const job::PlanResult& plan,
                const std::optional<std::filesystem::path>& file);

}  // namespace overbend::commands
