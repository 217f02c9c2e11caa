#include "scenes/job/run/process.h"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "scenes/files/case/work.h"
#include "scenes/job/run/fitted_blank.h"
#include "scenes/job/run/job_rules.h"
#include "scenes/job/run/press_blocks.h"
#include "scenes/job/run/scene.h"
#include "scenes/job/run/step_clearance.h"
#include "sim/counted.h"
#include "sim/shop/press_check.h"
#include "sim/strip/place.h"
#include "sim/tolerances.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

constexpr double balanced = 1e-3;  // of the peak force, that the contacts' sum may be open by

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
        each_read_state(r, [&](const stroke::State& s, bool free) {
            const BendShape shape = bend_shape(r, s, blank.flat_middle(b), blank.flat_middle(b + 1));
            (free ? bend.shape_free : bend.shape_loaded) = shape;
            (free ? bend.free : bend.loaded) = angle_as_drawn(result.stroke.free, shape.angle);
        });
        result.bends.push_back(bend);
    }
}

// An outcome other than the stop that was asked for.
void judge_outcome(const StepResult& step, const FindingPlace& place, Findings& findings) {
    using stroke::Outcome;
    if (step.stroke.outcome == Outcome::reached) return;
    const Rule rule = step.stroke.outcome == Outcome::folded ? Rule::folded
                      : step.stroke.solved()                 ? Rule::stop_not_reached
                                                             : Rule::not_solved;
    add(findings, {Severity::stops, rule, 0.0, 0.0, {}, step.stroke.reason, place});
}

// Whether the press bears it, and how far the figures may be trusted.
void judge_force(const files::Case& c, const StepResult& step, const FindingPlace& place,
                 Findings& findings) {
    const auto say = [&](Finding f) {
        f.place = place;
        add(findings, f);
    };
    if (c.press) {
        const Finding force = shop::force_check(c.press->force, step.stroke.peak_force, c.width);
        if (force.severity == Severity::stops) say(force);
    }
    const double residue = step.stroke.audit.residue_percent();
    if (residue > limits::open_balance)
        say({Severity::caution, Rule::open_balance, residue, limits::open_balance});
    if (step.stroke.balance_error > balanced)
        say({Severity::caution, Rule::contact_balance, step.stroke.balance_error, balanced});
}

std::string what_it_is(const files::Case& c, const files::Step& step) {
    const files::WorkKind& work = files::work_of(c, step);
    return std::string(work.work == files::Work::any ? "tools drawn as outlines" : work.stroke) +
           (step.pad ? " over a pad on springs" : "");
}

StepResult run_step(const files::Case& c, const Blank& blank, int index, const strip::StripState& strip,
                    const std::vector<bool>& made, const ProcessOptions& options, Findings& findings) {
    const files::Step& step = c.steps[index];
    const auto begin = std::chrono::steady_clock::now();
    StepResult result;
    result.name = step.name;
    stroke::StrokeScene scene = make_scene(c, blank, step, strip, made);
    const double touch = scene.tools.front().position.y();
    if (const auto at = static_cast<std::size_t>(index);
        at < options.ram_stop.size() && options.ram_stop[at]) {
        scene.stop.kind = stroke::StopKind::travel;
        scene.stop.value = touch - *options.ram_stop[at];
    }
    stroke::StrokeOptions how;
    how.record = options.record;
    if (options.progress)
        how.progress = [&](double travel, double) {
            options.progress(index, travel);
            return true;
        };
    result.stroke = stroke::press(scene, how);
    result.ram_stop = touch - result.stroke.stop_travel;
    if (result.stroke.solved()) read_bends(c, blank, step, result);
    result.gauge = gauge_distance(scene.tools);
    const FindingPlace place = on_step(index);
    judge_outcome(result, place, findings);
    if (gauge_finds_no_edge(c, scene.strip)) add_note(Rule::gauge_without_edge, "", index, findings);
    if (files::agreement(c, step) == 0.0) add_note(Rule::not_compared, what_it_is(c, step), index, findings);
    read_clearance(scene.zone, ram_rise(c), index, result, findings);
    judge_force(c, result, place, findings);
    result.wall_ms =
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count();
    return result;
}

Finding finding_of(const MeasuredSize& m, const ProfileFit& profile) {
    const double unit = m.what == SizeKind::angle ? degree : 1.0;
    Finding f{Severity::stops, Rule::finished_angle, m.off() / unit, m.allowed / unit};
    f.further = {m.made / unit, m.drawn / unit};
    if (m.what == SizeKind::angle || m.what == SizeKind::radius) {
        if (m.what == SizeKind::radius) f.rule = Rule::finished_radius;
        f.place = on_bend(m.index);
    } else if (m.what == SizeKind::leg) {
        f.rule = Rule::finished_leg;
        f.further.push_back(m.index + 1.0);
    } else {
        const ProfilePoint& point = profile.points[m.index];
        f.rule = Rule::finished_profile;
        f.further = {point.flat + 1.0};
        if (point.bend >= 0) f.place = on_bend(point.bend);
    }
    return f;
}

// The profile is said to be off where no angle, leg or radius is: otherwise it follows from them.
void judge_part(JobResult& job) {
    bool sizes_within = true;
    for (const MeasuredSize& m : job.measures) {
        if (m.within() || (m.what == SizeKind::profile && !sizes_within)) continue;
        sizes_within = false;
        add(job.findings, finding_of(m, job.profile));
    }
}

// An angle that is likely to have been typed in radians.
void judge_units(const files::Case& c, Findings& findings) {
    for (std::size_t b = 0; b < c.part.bends.size(); ++b) {
        const double typed = c.part.bends[b].angle / degree, meant = typed / degree;
        // 1.57 is 89.95 degrees, which is 90; 1.5 is 85.94, and no slip.
        if (std::abs(typed) > 3.15 || std::abs(std::remainder(meant, 5.0)) > 0.06) continue;
        add(findings, {Severity::caution,
                       Rule::slip_of_units,
                       typed,
                       meant,
                       {typed, meant},
                       "",
                       on_bend(static_cast<int>(b))});
    }
}

// A bend is looked at when the strip is free of the last stroke on it, a stroke when it is pressed furthest.
void find_state(const files::Case& c, const std::vector<StepResult>& steps, FindingPlace& place) {
    if (place.of == On::bend)
        for (int i = 0; i < static_cast<int>(steps.size()); ++i) {
            const std::vector<int>& bends = c.steps[i].bends;
            if (std::find(bends.begin(), bends.end(), place.bend) != bends.end()) place.step = i;
        }
    if (place.state >= 0 || place.step < 0 || place.step >= static_cast<int>(steps.size())) return;
    const stroke::Recording& recording = steps[place.step].stroke.recording;
    place.state =
        place.of == On::bend ? static_cast<int>(recording.states.size()) - 1 : state_at(recording, 1e300);
}

}  // namespace

double BendResult::springback() const {
    return drawing < 0.0 ? free - loaded : loaded - free;
}

int state_at(const stroke::Recording& recording, double travel) {
    int best = -1;
    for (int i = 0; i < static_cast<int>(recording.states.size()); ++i) {
        const stroke::State& s = recording.states[i];
        if (i > 0 && s.phase != stroke::Phase::pressing && s.phase != stroke::Phase::held) continue;
        if (best < 0 || std::abs(s.travel - travel) <= std::abs(recording.states[best].travel - travel))
            best = i;
    }
    return best;
}

std::string verdict_words(const JobResult& job) {
    if (!job.solved) return "Not feasible: a stroke was not solved.";
    const std::size_t against = with(job.findings, Severity::stops).size();
    return against == 0 ? "Feasible: no problems found."
                        : "Not feasible: " + counted(against, "problem") + ".";
}

namespace {

JobResult run_on(const Blank& blank, const files::Case& c, const ProcessOptions& options) {
    JobResult job;
    job.blank = blank;
    job.mass_g = blank_mass(c, job.blank);
    strip::StripState strip = make_strip(c, job.blank);
    std::vector<bool> made(c.part.bends.size(), false);
    job.solved = true;
    for (int i = 0; i < static_cast<int>(c.steps.size()) && job.solved; ++i) {
        job.steps.push_back(run_step(c, job.blank, i, strip, made, options, job.findings));
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
        const files::Case& drawn = options.drawn ? *options.drawn : c;
        job.profile = fit_profile(drawn, job.blank, strip);
        job.fitted = fitted_blank(c, job.blank, strip);
        job.measures = measure_part(drawn, job.blank, bent_strip(strip), job.finished_angle, job.profile);
        judge_part(job);
    }
    judge_units(c, job.findings);
    for (const Finding& f : job_rules(c, job.blank, job.steps)) add(job.findings, f);
    for (Finding& f : job.findings) find_state(c, job.steps, f.place);
    return job;
}

}  // namespace

JobResult run_process(const files::Case& c, const ProcessOptions& options) {
    const Blank by_rule = make_blank(c);
    if (!c.bend_lines.empty()) return run_on(by_rule, c, options);
    ProcessOptions brief = options;
    brief.record = false;
    const JobResult first = run_on(by_rule, c, brief);
    if (!first.solved) return run_on(by_rule, c, options);
    Blank fitted = in_hundredths(first.fitted);
    if (c.blank_length) fitted.length = *c.blank_length;
    return run_on(fitted, c, options);
}

}  // namespace overbend::job
