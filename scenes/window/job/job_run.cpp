#include "scenes/window/job/job_run.h"

#include <utility>

#include "scenes/job/run/spread.h"

namespace overbend::window {

std::vector<int> RanJob::recorded() const {
    std::vector<int> steps;
    for (int i = 0; i < static_cast<int>(result.steps.size()); ++i)
        if (result.steps[i].stroke.recording.states.size() > 1) steps.push_back(i);
    return steps;
}

void RunProgress::put(RanJob so_far) {
    const std::lock_guard<std::mutex> lock(mutex_);
    so_far_ = std::move(so_far);
}

std::optional<RanJob> RunProgress::take() {
    const std::lock_guard<std::mutex> lock(mutex_);
    std::optional<RanJob> taken;
    taken.swap(so_far_);
    return taken;
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
    how.after_step = [&](const job::JobResult& so_far) {
        wanted.check();
        RanJob part;
        part.c = c, part.result = so_far, part.goes_on = true;
        progress.put(std::move(part));
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
