// A job as a film shows it: its strokes, or some of them, with what is to be told of each.

#pragma once

#include <vector>

#include "render/film/timeline.h"
#include "scenes/files/case/case.h"
#include "scenes/job/run/process.h"

namespace overbend::documents {

// steps: indices into the job's steps, in their order. The job must outlive the film.
film::FilmJob film_data(const files::Case& c, const job::JobResult& job, const std::vector<int>& steps);

}  // namespace overbend::documents
