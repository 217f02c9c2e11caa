// A job as a film shows it: its strokes, or some of them, with what is to be told of each.

#pragma once

#include <string>
#include <vector>

#include "render/film/timeline.h"
#include "scenes/program/job.h"

namespace overbend::program {

// Indices of the steps that a list names, in the job's order: "all", or names and numbers with commas between
// ("lip,hook", "1,3"), or a stretch of numbers ("2-4"). Throws CLI::ValidationError naming the option.
std::vector<int> chosen_steps(const scenes::Case& c, const std::string& list);

// One step by its name or number. Throws as above, naming `option`.
int step_named(const scenes::Case& c, const std::string& name, const std::string& option);

// The film of those steps; the job must outlive it.
render::FilmJob film_job(const Job& job, const std::vector<int>& steps);

}  // namespace overbend::program
