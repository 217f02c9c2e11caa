// A case and its result as what pictures of every kind show of them.

#pragma once

#include <vector>

#include "render/picture/shown_job.h"
#include "scenes/files/case/case.h"
#include "scenes/job/run/process.h"

namespace overbend::documents {

// steps: those that are shown, indices into the job's steps, in their order. The recordings are the
// result's: it must outlive what is made.
picture::ShownJob shown_job(const files::Case& c, const job::JobResult& job, const std::vector<int>& steps);

// Of all steps that were solved: what went wrong in others the findings tell.
picture::ShownJob shown_job(const files::Case& c, const job::JobResult& job);

picture::Turning turning_between(const files::Step& before, const files::Step& step);

}  // namespace overbend::documents
