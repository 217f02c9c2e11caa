// A plan as tables for people.

#pragma once

#include <filesystem>
#include <optional>

#include "scenes/planning/plan.h"

namespace overbend::program {

// file  of the completed case, when there is one
void print_plan(const scenes::Case& c, const scenes::PlanResult& plan,
                const std::optional<std::filesystem::path>& file);

}  // namespace overbend::program
