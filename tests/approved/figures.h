// The figures of a case that are approved, and how far they may stray.
//
// They are picked from results.json and kept beside the case, in approved.json: angles, travels, forces,
// clearances, the blank and the finished profile, with their tolerances. A change that moves one of them
// further is shown, and is either a fault or is accepted (`tests/run --accept`).

#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace overbend::tests {

// results: a job's results.json. The profile is given at some thirty points.
nlohmann::ordered_json approved_figures(const nlohmann::ordered_json& results);

// One line for each figure that differs by more than the tolerance that `approved` states for its key, or
// that is there on one side alone: "steps/lip/bends/lip/free_deg: 90.013, approved 89.700, 0.313 apart, 0.150
// allowed".
std::vector<std::string> differences(const nlohmann::ordered_json& approved,
                                     const nlohmann::ordered_json& found);

// The tolerance of every key that holds a number, in its own unit; forces in per cent.
nlohmann::ordered_json usual_tolerances();

}  // namespace overbend::tests
