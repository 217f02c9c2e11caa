// Blank and stops set right until the finished part is the drawing: the job is run, what is left of every leg
// and every angle is put back into the blank's bend lines and the strokes' stops, and it is run again.
//
// Units  mm, rad.

#pragma once

#include <functional>
#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/process.h"
#include "sim/units.h"

namespace overbend::job {

struct FitOptions {
    double angle = 0.1 * degree;  // rad, the most that any angle may be off
    double profile = 0.1;         // mm, the most that the profile may be off
    int most_runs = 6;
    std::vector<int> own_tools;  // places in Case::tools of tools that may be changed: not made yet
    std::function<void(int run, int step, double travel)> progress;
};

struct Fit {
    files::Case c;  // with bend lines and stops as run last
    JobResult job;  // of that run
    int runs = 0;
    double worst_angle = 0.0;  // rad, of the finished part; meaningless when a stroke was not solved
    bool meets = false;
    std::vector<std::string> why_not;        // when it does not
    std::vector<std::string> changed_tools;  // in words: overbend and sizes that they were given
};

// The steps must make all bends. Stops by travel, force or gap are left as they are.
Fit fit_to_drawing(const files::Case& c, const FitOptions& options);

}  // namespace overbend::job
