#include "scenes/job/run/process.h"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "scenes/job/run/fitted_blank.h"
#include "scenes/job/run/job_rules.h"
#include "scenes/job/run/press_blocks.h"
#include "scenes/job/run/scene.h"
#include "scenes/job/run/step_clearance.h"
#include "sim/errors.h"
#include "sim/strip/place.h"
#include "sim/tolerances.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

// Angles as drawn: a strip that lies face down shows them with the other sign.
double angle_as_drawn(const strip::StripState& s, double angle) {
    return s.face_down ? -angle : angle;
}

void read_bends(const files::Case& c, const Blank& blank, const files::Step& step, StepResult& result) {
    const stroke::Recording& r = result.stroke.recording;
    for (const int b : step.bends) {
        BendResult bend;
        bend.bend = b;
        bend.drawing = c.part.bends[b].angle;
        for (const stroke::State& s : r.states) {
            if (s.phase != stroke::Phase::held && s.phase != stroke::Phase::free) continue;
            const BendShape shape = bend_shape(r, s, blank.flat_middle(b), blank.flat_middle(b + 1));
            const bool free = s.phase == stroke::Phase::free;
            (free ? bend.shape_free : bend.shape_loaded) = shape;
            (free ? bend.free : bend.loaded) = angle_as_drawn(result.stroke.free, shape.angle);
        }
        result.bends.push_back(bend);
    }
}

void add_warnings(StepResult& result) {
    const double residue = result.stroke.audit.residue_percent();
    if (residue > limits::open_balance)
        result.warnings.push_back(words("the energy balance is off by %.2f per cent", residue));
    if (result.stroke.balance_error > 1e-3)
        result.warnings.push_back(words("the contact forces balance only to within %.2g of the peak force",
                                        result.stroke.balance_error));
}

StepResult run_step(const files::Case& c, const Blank& blank, int index, const strip::StripState& strip,
                    const std::vector<bool>& made, const ProcessOptions& options) {
    const files::Step& step = c.steps[index];
    const auto begin = std::chrono::steady_clock::now();
    StepResult result;
    result.name = step.name;
    const stroke::StrokeScene scene = make_scene(c, blank, step, strip, made);
    stroke::StrokeOptions how;
    how.record = options.record;
    if (options.progress)
        how.progress = [&](double travel, double) {
            options.progress(index, travel);
            return true;
        };
    result.stroke = stroke::press(scene, how);
    if (result.stroke.solved()) read_bends(c, blank, step, result);
    result.gauge = gauge_distance(scene.tools);
    if (gauge_finds_no_edge(c, scene.strip))
        result.remarks.push_back(
            "the gauge does not touch an edge of the strip: at its height the strip continues past it");
    read_clearance(scene.zone, ram_rise(c), result);
    add_warnings(result);
    result.wall_ms =
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count();
    return result;
}

// A figure to be written with two decimals, which must not read "-0.00".
double without_minus_zero(double value) {
    return std::abs(value) < 0.005 ? 0.0 : value;
}

void judge(const files::Case& c, JobResult& job) {
    for (const StepResult& step : job.steps) {
        const char* name = step.name.c_str();
        if (step.stroke.outcome != stroke::Outcome::reached)
            job.findings.push_back(words("step '%s': %s", name, step.stroke.reason.c_str()));
        for (const Interference& f : step.interferences)
            job.findings.push_back(words("step '%s': %s", name, f.words.c_str()));
        const double force = step.stroke.peak_force * c.width / 1000.0;
        if (c.press && force > c.press->force)
            job.findings.push_back(
                words("step '%s': %.1f kN is more than the press's %.1f kN", name, force, c.press->force));
    }
    for (std::size_t b = 0; b < job.finished_angle.size(); ++b) {
        const files::Bend& bend = c.part.bends[b];
        const double off = (job.finished_angle[b] - bend.angle) / degree;
        if (std::abs(off) > c.part.angle_tolerance / degree)
            job.findings.push_back(words("bend '%s': %.2f degrees instead of %.2f; tolerance %.2f",
                                         bend.name.c_str(),
                                         without_minus_zero(job.finished_angle[b] / degree),
                                         bend.angle / degree, c.part.angle_tolerance / degree));
    }
    for (const plan::RuleFinding& f : job.rules.findings)
        if (f.stops) job.findings.push_back(place_words(c, f) + ": " + f.words);
}

}  // namespace

double BendResult::springback() const {
    return drawing < 0.0 ? free - loaded : loaded - free;
}

JobResult run_process(const files::Case& c, const ProcessOptions& options) {
    JobResult job;
    job.blank = make_blank(c);
    job.mass_g = blank_mass(c, job.blank);
    strip::StripState strip = make_strip(c, job.blank);
    std::vector<bool> made(c.part.bends.size(), false);
    job.solved = true;
    for (int i = 0; i < static_cast<int>(c.steps.size()) && job.solved; ++i) {
        job.steps.push_back(run_step(c, job.blank, i, strip, made, options));
        const StepResult& step = job.steps.back();
        job.solved = step.stroke.solved();
        strip = step.stroke.free;
        for (const int b : c.steps[i].bends) made[b] = true;
    }
    if (job.solved) {
        for (std::size_t b = 0; b < c.part.bends.size(); ++b)
            job.finished_angle.push_back(
                angle_as_drawn(strip, strip::turn_between(strip.blank_position, strip.theta,
                                                          job.blank.flat_middle(static_cast<int>(b)),
                                                          job.blank.flat_middle(static_cast<int>(b) + 1))));
        job.profile = fit_profile(c, job.blank, strip);
        job.fitted = fitted_blank(c, job.blank, strip);
    }
    job.rules = job_rules(c, job.blank, job.steps);
    judge(c, job);
    return job;
}

}  // namespace overbend::job
