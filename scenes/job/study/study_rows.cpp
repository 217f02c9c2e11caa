#include "scenes/job/study/study_rows.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <exception>
#include <mutex>
#include <thread>

#include "scenes/files/case/work.h"
#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

using What = StudySize::What;

// The last stroke on a bend, and the bend in it.
const BendResult* last_of(const JobResult& job, int bend) {
    const BendResult* found = nullptr;
    for (const StepResult& step : job.steps)
        for (const BendResult& b : step.bends)
            if (b.bend == bend) found = &b;
    return found;
}

const MeasuredSize* measure_of(const JobResult& job, SizeKind what, int index) {
    for (const MeasuredSize& m : job.measures)
        if (m.what == what && (what == SizeKind::profile || m.index == index)) return &m;
    return nullptr;
}

SizeKind kind_of(What what) {
    return what == What::angle    ? SizeKind::angle
           : what == What::leg    ? SizeKind::leg
           : what == What::radius ? SizeKind::radius
                                  : SizeKind::profile;
}

// As drawn: an angle that bends the other way is below 0.
double sense_of(const files::Case& c, const StudySize& size) {
    return size.what == What::angle && c.part.bends[static_cast<std::size_t>(size.index)].angle < 0.0 ? -1.0
                                                                                                      : 1.0;
}

double value_of(const files::Case& c, const JobResult& job, const StudySize& size) {
    const auto at = static_cast<std::size_t>(size.index);
    if (size.what == What::force) return job.steps[at].stroke.peak_force * c.width / 1000.0;
    if (size.what == What::springback) {
        const BendResult* bend = last_of(job, size.index);
        return bend ? bend->springback() / degree : 0.0;
    }
    const MeasuredSize* m = measure_of(job, kind_of(size.what), size.index);
    const double made = m ? m->made : 0.0;
    return size.what == What::angle ? sense_of(c, size) * made / degree : made;
}

void add_measured(const HeldStops& held, What what, int index, std::vector<StudySize>& sizes) {
    const MeasuredSize* m = measure_of(held.nominal, kind_of(what), index);
    if (!m) return;
    StudySize size;
    size.what = what, size.index = index;
    size.name = size_name(held.c, *m);
    const double unit = what == What::angle ? degree : 1.0;
    size.unit = what == What::angle ? "deg" : "mm";
    size.drawn = (what == What::angle ? std::abs(m->drawn) : m->drawn) / unit;
    // Where the profile is nearest to its limit differs from row to row: the rows' own verdict has it.
    size.allowed = m->reference || what == What::profile ? 0.0 : m->allowed / unit;
    const std::string& bend = what == What::angle || what == What::radius
                                  ? held.c.part.bends[static_cast<std::size_t>(index)].name
                                  : "";
    size.key = what == What::angle    ? "angle_deg of '" + bend + "'"
               : what == What::radius ? "inside_radius_mm of '" + bend + "'"
               : what == What::leg    ? "leg_mm " + std::to_string(index + 1)
                                      : "profile_mm";
    sizes.push_back(size);
}

// In the same words for all rows with that reason: what it is off by stands in the row's figures.
std::string reason_of(const files::Case& c, const JobResult& job) {
    for (const Finding& f : job.findings) {
        if (f.severity != Severity::stops) continue;
        const bool of_the_part = f.rule == Rule::finished_angle || f.rule == Rule::finished_leg ||
                                 f.rule == Rule::finished_radius || f.rule == Rule::finished_profile;
        if (of_the_part)
            for (const MeasuredSize& m : job.measures)
                if (!m.within()) return size_name(c, m);
        const std::string place = place_words(c, f.place);
        return (place.empty() ? "" : place + ": ") + facts_of(f.rule).name;
    }
    return why_not(c, job.findings);
}

}  // namespace

std::vector<StudySize> study_sizes(const HeldStops& held) {
    std::vector<StudySize> sizes;
    const int bends = static_cast<int>(held.c.part.bends.size());
    for (int b = 0; b < bends; ++b) add_measured(held, What::angle, b, sizes);
    for (int i = 0; i <= bends; ++i) add_measured(held, What::leg, i, sizes);
    for (int b = 0; b < bends; ++b) add_measured(held, What::radius, b, sizes);
    add_measured(held, What::profile, 0, sizes);
    for (int b = 0; b < bends; ++b) {
        const std::string& name = held.c.part.bends[static_cast<std::size_t>(b)].name;
        sizes.push_back({What::springback, b, "springback of '" + name + "'",
                         "springback_deg of '" + name + "'", "deg", 0.0, 0.0});
    }
    for (std::size_t s = 0; s < held.c.steps.size(); ++s) {
        const std::string& name = held.c.steps[s].name;
        sizes.push_back({What::force, static_cast<int>(s), "peak force of '" + name + "'",
                         "peak_force_kN of '" + name + "'", "kN", 0.0, 0.0});
    }
    return sizes;
}

StudyRow run_row(const StudyPlan& plan, const HeldStops& held, std::uint64_t number) {
    StudyRow row;
    row.number = number;
    row.values = row_values(plan, number);
    try {
        const VariedCase varied = vary(plan, row.values);
        const JobResult job = run_held(held, varied, plan.study.stops);
        row.solved = job.solved;
        row.good = job.feasible();
        if (!row.good) row.why = reason_of(varied.c, job);
        if (row.solved)
            for (const StudySize& size : study_sizes(held))
                row.sizes.push_back(value_of(varied.c, job, size));
    } catch (const NotSolved& error) {
        row.why = error.what();
    } catch (const OutOfRange& error) {
        row.why = error.what();
    }
    return row;
}

void run_rows(const StudyPlan& plan, const HeldStops& held, const std::vector<std::uint64_t>& numbers,
              const std::function<bool(StudyRow)>& take) {
    std::atomic<std::size_t> next{0};
    std::atomic<bool> stop{false};
    std::mutex taking;
    std::exception_ptr failed;
    const auto work = [&] {
        for (std::size_t i = next++; i < numbers.size() && !stop; i = next++) {
            try {
                StudyRow row = run_row(plan, held, numbers[i]);
                const std::lock_guard<std::mutex> one(taking);
                if (!take(std::move(row))) stop = true;
            } catch (...) {
                const std::lock_guard<std::mutex> one(taking);
                if (!failed) failed = std::current_exception();
                stop = true;
            }
        }
    };
    std::vector<std::thread> workers;
    const std::size_t cores = std::max(1u, std::thread::hardware_concurrency());
    for (std::size_t w = 0; w < std::min(cores, numbers.size()); ++w) workers.emplace_back(work);
    for (std::thread& w : workers) w.join();
    if (failed) std::rethrow_exception(failed);
}

}  // namespace overbend::job
