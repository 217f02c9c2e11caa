#include "scenes/window/job/job_run.h"

#include "scenes/job/run/spread.h"

namespace overbend::window {

std::vector<int> RanJob::recorded() const {
    std::vector<int> steps;
    for (int i = 0; i < static_cast<int>(result.steps.size()); ++i)
        if (result.steps[i].stroke.recording.states.size() > 1) steps.push_back(i);
    return steps;
}

RanJob run_job(const files::Case& c, const Wanted& wanted, RunProgress& progress) {
    RanJob job;
    job.c = c;
    progress.step = 0, progress.travel = 0.0;
    job::ProcessOptions how;
    how.progress = [&](int step, double travel) {
        wanted.check();
        progress.step = step, progress.travel = travel;
    };
    // Cancelled is no std::exception: it goes through.
    try {
        job.result = job::run_process(c, how);
    } catch (const std::exception& error) {
        job.wrong = error.what();
        return job;
    }
    wanted.check();
    try {
        job.result.spread = job::angle_spread(c, job.result);
        wanted.check();
        job.shop = job::look_at_shop(c, job.result);
        // The recordings are lent to it.
        job.pattern = job::pattern_of(c, std::move(job.result));
        job.result = std::move(job.pattern.job);
        job.pattern.job = {};
    } catch (const std::exception& error) {
        job.wrong = error.what();
    }
    return job;
}

}  // namespace overbend::window
