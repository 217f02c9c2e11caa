#include "scenes/job/study/held_stops.h"

#include "scenes/job/run/flat_pattern.h"
#include "sim/errors.h"

namespace overbend::job {

namespace {

void forget_pictures(JobResult& job) {
    for (StepResult& step : job.steps) step.stroke.recording = {}, step.stroke.curve.clear();
}

}  // namespace

HeldStops hold_stops(const StudyPlan& plan) {
    HeldStops held;
    ProcessOptions brief;
    brief.record = false;
    JudgedJob job = judge_job(plan.c, brief);
    if (!job.result.solved || job.result.steps.empty())
        throw NotSolved("the nominal strip: " + why_not(plan.c, job.result.findings));
    held.c = with_blank(plan.c, job.result.blank);
    for (std::size_t i = 0; i < job.result.steps.size(); ++i)
        held.ram_stop.push_back(plan.c.steps[i].stop == files::StopKind::force
                                    ? std::nullopt
                                    : std::optional<double>(job.result.steps[i].ram_stop));
    held.money = job.shop.cost.money;
    if (job.shop.cost_asked) held.cost_per_part = job.shop.cost.per_part(job.shop.rates.batch);
    held.nominal = std::move(job.result);
    forget_pictures(held.nominal);
    return held;
}

JobResult run_held(const HeldStops& held, const VariedCase& varied, files::Stops stops) {
    files::Case c = varied.c;
    c.bend_lines = held.c.bend_lines;
    c.blank_length = *held.c.blank_length + varied.longer;
    ProcessOptions options;
    options.record = false;
    options.drawn = &held.c;
    if (stops == files::Stops::held) options.ram_stop = held.ram_stop;
    for (std::size_t i = 0; i < options.ram_stop.size(); ++i)
        if (options.ram_stop[i]) *options.ram_stop[i] -= varied.deeper[i];
    JobResult job = judge_job(c, options).result;
    forget_pictures(job);
    return job;
}

std::vector<std::vector<double>> stop_sensitivity(const HeldStops& held) {
    constexpr double change = 0.02;  // mm
    const std::size_t steps = held.c.steps.size();
    const VariedCase base{held.c, std::vector<double>(steps, 0.0), 0.0};
    const std::vector<MeasuredSize> before = run_held(held, base).measures;
    std::vector<std::vector<double>> found(before.size(), std::vector<double>(steps, 0.0));
    for (std::size_t s = 0; s < steps; ++s) {
        if (!held.ram_stop[s]) continue;
        VariedCase deeper = base;
        deeper.deeper[s] = change;
        const std::vector<MeasuredSize> after = run_held(held, deeper).measures;
        for (std::size_t m = 0; m < before.size() && m < after.size(); ++m)
            found[m][s] = (after[m].made - before[m].made) / change;
    }
    return found;
}

}  // namespace overbend::job
