// Blank and stops set right until the finished part is the drawing: the job is run, what is left of every leg
// and every angle is put back into the blank's bend lines and the strokes' stops, and it is run again, until
// all that is measured lies well within its tolerance or no nearer is reached.
//
// Units  mm, rad.

#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/process.h"

namespace overbend::job {

struct FitOptions {
    int most_runs = 6;
    std::vector<int> own_tools;  // places in Case::tools of tools that may be changed: not made yet
    std::function<void(int run, int step, double travel)> progress;
};

struct Fit {
    files::Case c;  // with bend lines and stops as run last
    JobResult job;  // of that run
    int runs = 0;
    bool meets = false;                      // all that is measured is within tolerance
    std::vector<std::string> why_not;        // when it is not
    std::vector<std::string> changed_tools;  // in words: overbend and sizes that they were given
};

// The steps must make all bends. Stops by travel, force or gap are left as they are.
// first: its run as it is, where that is known.
Fit fit_to_drawing(const files::Case& c, const FitOptions& options,
                   const std::optional<JobResult>& first = std::nullopt);

}  // namespace overbend::job
