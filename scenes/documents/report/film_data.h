// A job as a film shows it: its strokes, or some of them, with what is to be told of each.

#pragma once

#include <vector>

#include "render/film/timeline.h"
#include "scenes/case/case.h"
#include "scenes/process/process.h"

namespace overbend::scenes {

// steps: indices into the job's steps, in their order. The job must outlive the film.
render::FilmJob film_data(const Case& c, const JobResult& job, const std::vector<int>& steps);

}  // namespace overbend::scenes
