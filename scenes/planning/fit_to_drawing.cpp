#include "scenes/planning/fit_to_drawing.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>

#include "scenes/planning/tool_overbend.h"
#include "scenes/process/fitted_blank.h"

namespace overbend::scenes {

namespace {

constexpr double degree = 3.14159265358979323846 / 180.0;
constexpr double worth_a_stop = 0.005 * degree;  // less is left alone: it would be noise in the file

template <class... Values>
std::string words(const char* form, Values... values) {
    char text[300];
    std::snprintf(text, sizeof text, form, values...);
    return text;
}

double off_by(const Case& c, const JobResult& job, int bend) {
    return std::abs(c.part.bends[bend].angle) - std::abs(job.finished_angle[bend]);
}

double worst_of(const Case& c, const JobResult& job) {
    double worst = 0.0;
    for (std::size_t b = 0; b < job.finished_angle.size(); ++b)
        worst = std::max(worst, std::abs(off_by(c, job, static_cast<int>(b))));
    return worst;
}

// Of a step's bends, both must share what one stop can do.
void correct_stop(const Case& c, const JobResult& job, Step& step) {
    if (step.stop != StopKind::drawing_angle && step.stop != StopKind::free_angle) return;
    double off = 0.0;
    for (const int b : step.bends) off += off_by(c, job, b) / static_cast<double>(step.bends.size());
    if (std::abs(off) < worth_a_stop) return;
    const int stop_bend = step.first == First::right ? step.bends.back() : step.bends.front();
    const double now =
        step.stop == StopKind::free_angle ? step.stop_value : std::abs(c.part.bends[stop_bend].angle);
    step.stop = StopKind::free_angle;
    step.stop_value = now + off;
}

// A bend that is pressed again later takes its angle from its last stroke.
bool is_last_of_its_bends(const Case& c, std::size_t index) {
    for (std::size_t later = index + 1; later < c.steps.size(); ++later)
        for (const int b : c.steps[later].bends)
            if (std::count(c.steps[index].bends.begin(), c.steps[index].bends.end(), b) > 0) return false;
    return true;
}

// How a stroke of two bends answers to where the strip is laid: it slides between the tools, so that the
// bends move by more or less than their lines. Learned from run to run.
struct Answer {
    double line = 0.0;     // of the pair's middle, from the bend line before it
    double missing = 0.0;  // of the leg before it, mm
    double gain = 1.0;     // shift of the bends over that of their lines
    bool known = false;
};
using Answers = std::map<int, Answer>;  // by the left bend

void learn(Answer& answer, double line, double missing) {
    constexpr double least_shift = 0.02, least_gain = 0.4, most_gain = 5.0;
    const double shift = line - answer.line;
    if (answer.known && std::abs(shift) > least_shift)
        answer.gain = std::clamp((answer.missing - missing) / shift, least_gain, most_gain);
    answer.line = line, answer.missing = missing, answer.known = true;
}

// The lines of two bends made together, moved by what the leg before them misses over the gain.
void lay_pairs(const Fit& fit, Answers& answers, Blank& fitted) {
    const std::vector<double> missing = legs_missing(fit.c, fit.job.blank, fit.job.steps.back().stroke.free);
    const auto line = [](const Blank& blank, int b) {
        const double before = b == 0 ? 0.0 : blank.bend_line[b - 1];
        return 0.5 * (blank.bend_line[b] + blank.bend_line[b + 1]) - before;
    };
    for (const Step& step : fit.c.steps) {
        if (step.bends.size() != 2) continue;
        const int b = step.bends.front();
        Answer& answer = answers[b];
        learn(answer, line(fit.job.blank, b), missing[b]);
        const double wanted = answer.line + missing[b] / answer.gain;
        const double more = wanted - line(fitted, b);
        fitted.bend_line[b] += more, fitted.bend_line[b + 1] += more;
    }
}

void correct(Fit& fit, Answers& answers) {
    Blank blank = fitted_blank(fit.c, fit.job.blank, fit.job.steps.back().stroke.free);
    lay_pairs(fit, answers, blank);
    fit.c.blank_length = blank.length;
    fit.c.bend_lines = blank.bend_line;
    for (std::size_t i = 0; i < fit.c.steps.size(); ++i)
        if (is_last_of_its_bends(fit.c, i)) correct_stop(fit.c, fit.job, fit.c.steps[i]);
}

// Tools that close before the angle is reached get more overbend, when they are not made yet.
bool give_overbend(const FitOptions& options, Fit& fit) {
    bool changed = false;
    for (std::size_t i = 0; i < fit.job.steps.size(); ++i) {
        const StepResult& result = fit.job.steps[i];
        const bool closed = result.stroke.outcome == stroke::Outcome::travel_limit ||
                            result.stroke.outcome == stroke::Outcome::jammed;
        if (!closed || result.bends.empty()) continue;
        const BendResult& bend = result.bends.front();
        const double missing = std::abs(bend.drawing) - std::abs(bend.free);
        if (missing <= options.angle) continue;
        const std::string change = add_overbend(fit.c, fit.c.steps[i], missing, options.own_tools);
        if (change.empty()) continue;
        fit.changed_tools.push_back(change);
        changed = true;
    }
    return changed;
}

void say_of_profile(const FitOptions& options, Fit& fit) {
    const ProfileFit& profile = fit.job.profile;
    if (profile.worst_on_flats.off > options.profile)
        fit.why_not.push_back(words("flat %d is %.2f mm off the drawing after %d runs",
                                    profile.worst_on_flats.flat + 1, profile.worst_on_flats.off, fit.runs));
    if (profile.worst_in_bends.off <= options.profile) return;
    const int b = profile.worst_in_bends.bend;
    for (const StepResult& step : fit.job.steps)
        for (const BendResult& made : step.bends)
            if (made.bend == b)
                fit.why_not.push_back(words(
                    "bend '%s' is %.2f mm off the drawing's arc: its inside radius comes out as %.2f mm, and "
                    "%.2f is drawn; a nose of another radius would mend it",
                    fit.c.part.bends[b].name.c_str(), profile.worst_in_bends.off,
                    made.shape_free.inside_radius, fit.c.part.bends[b].inside_radius));
}

void say_why_not(const FitOptions& options, Fit& fit) {
    const JobResult& job = fit.job;
    if (!job.solved) {
        fit.why_not = job.findings;
        return;
    }
    for (std::size_t b = 0; b < job.finished_angle.size(); ++b) {
        const double off = -off_by(fit.c, job, static_cast<int>(b));
        if (std::abs(off) > options.angle)
            fit.why_not.push_back(words("bend '%s' is %.2f degrees %s after %d runs",
                                        fit.c.part.bends[b].name.c_str(), std::abs(off) / degree,
                                        off > 0.0 ? "too sharp" : "too open", fit.runs));
    }
    say_of_profile(options, fit);
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
        const StepResult& step = job.steps[i];
        if (step.stroke.outcome == stroke::Outcome::reached) continue;
        fit.why_not.push_back(words("step '%s': %s", step.name.c_str(), step.stroke.reason.c_str()));
    }
}

}  // namespace

namespace {

void run_once(const FitOptions& options, Fit& fit) {
    ProcessOptions how;
    if (options.progress)
        how.progress = [&](int step, double travel) { options.progress(fit.runs + 1, step, travel); };
    fit.job = run_process(fit.c, how);
    ++fit.runs;
    if (!fit.job.solved) return;
    fit.worst_angle = worst_of(fit.c, fit.job);
    fit.meets = fit.worst_angle <= options.angle && fit.job.profile.greatest() <= options.profile;
}

// How far a run is from what is wanted; 1 and less meets it.
double distance_of(const FitOptions& options, const Fit& fit) {
    if (!fit.job.solved) return 1e300;
    return std::max(fit.worst_angle / options.angle, fit.job.profile.greatest() / options.profile);
}

}  // namespace

Fit fit_to_drawing(const Case& c, const FitOptions& options) {
    Fit fit;
    fit.c = c;
    run_once(options, fit);
    Fit best = fit;
    Answers answers;
    int no_nearer = 0;
    while (fit.job.solved && !fit.meets && fit.runs < options.most_runs && no_nearer < 2) {
        const bool retooled = give_overbend(options, fit);
        correct(fit, answers);
        run_once(options, fit);
        const bool nearer = retooled || distance_of(options, fit) < distance_of(options, best);
        no_nearer = nearer ? 0 : no_nearer + 1;
        if (nearer) best = fit;
    }
    best.runs = fit.runs;
    best.c.blank_length = best.job.blank.length;  // written down, even when nothing had to be corrected
    best.c.bend_lines = best.job.blank.bend_line;
    if (!best.meets) say_why_not(options, best);
    return best;
}

}  // namespace overbend::scenes
