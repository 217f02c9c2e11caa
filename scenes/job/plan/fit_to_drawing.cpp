#include "scenes/job/plan/fit_to_drawing.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "scenes/job/plan/tool_size.h"
#include "scenes/job/run/fitted_blank.h"
#include "scenes/job/run/step_tools.h"
#include "sim/counted.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

constexpr double worth_overbend = 0.1 * degree;  // less is no reason to change a tool
constexpr double worth_a_stop = 0.005 * degree;  // less is left alone: it would be noise in the file

double off_by(const files::Case& c, const JobResult& job, int bend) {
    return std::abs(c.part.bends[bend].angle) - std::abs(job.finished_angle[bend]);
}

// Of a step's bends, both must share what one stop can do.
void correct_stop(const files::Case& c, const JobResult& job, files::Step& step) {
    if (step.stop != files::StopKind::drawing_angle && step.stop != files::StopKind::free_angle) return;
    double off = 0.0;
    for (const int b : step.bends) off += off_by(c, job, b) / static_cast<double>(step.bends.size());
    if (std::abs(off) < worth_a_stop) return;
    const int stop_bend = step.first == files::First::right ? step.bends.back() : step.bends.front();
    const double now =
        step.stop == files::StopKind::free_angle ? step.stop_value : std::abs(c.part.bends[stop_bend].angle);
    step.stop = files::StopKind::free_angle;
    step.stop_value = now + off;
}

// A bend that is pressed again later takes its angle from its last stroke.
bool is_last_of_its_bends(const files::Case& c, std::size_t index) {
    for (std::size_t later = index + 1; later < c.steps.size(); ++later)
        for (const int b : c.steps[later].bends)
            if (std::count(c.steps[index].bends.begin(), c.steps[index].bends.end(), b) > 0) return false;
    return true;
}

// How a leg answers to what sets it, learned from run to run.
struct Answer {
    double set = 0.0;      // as it was, mm
    double missing = 0.0;  // of the leg, mm
    double gain = 1.0;     // what the leg gets over what is set
    bool known = false;
};

// Where to set it so that nothing is missing.
double next_setting(Answer& answer, double set, double missing) {
    constexpr double least_shift = 0.02, least_gain = 0.4, most_gain = 5.0;
    const double shift = set - answer.set;
    if (answer.known && std::abs(shift) > least_shift)
        answer.gain = std::clamp((answer.missing - missing) / shift, least_gain, most_gain);
    answer.set = set, answer.missing = missing, answer.known = true;
    return set + missing / answer.gain;
}

// Of a stroke of two bends. It slides between the tools, so that the bends move by more or less than their
// lines; and how far they stand apart is the tools'.
struct PairAnswers {
    Answer place;  // set: the line of the pair's middle, from the bend line before it; up to this middle
    Answer size;   // set: pair_size; the leg between the two
};
struct Answers {
    std::map<int, PairAnswers> pairs;  // by the left bend
    std::map<int, Answer> noses;       // by the punch's place; set: its radius; the arcs'
};

// The lines of two bends made together, moved by what is missing up to their middle over the gain.
void lay_pairs(const Fit& fit, const std::vector<double>& missing, Answers& answers, Blank& fitted) {
    const auto line = [](const Blank& blank, int b) {
        const double before = b == 0 ? 0.0 : blank.bend_line[b - 1];
        return 0.5 * (blank.bend_line[b] + blank.bend_line[b + 1]) - before;
    };
    for (const files::Step& step : fit.c.steps) {
        if (step.bends.size() != 2) continue;
        const int b = step.bends.front();
        const double wanted =
            next_setting(answers.pairs[b].place, line(fit.job.blank, b), missing[b] + 0.5 * missing[b + 1]);
        const double more = wanted - line(fitted, b);
        fitted.bend_line[b] += more, fitted.bend_line[b + 1] += more;
    }
}

// Tools of two bends that are not made yet get another size; the blank, what the leg between takes then.
void size_pairs(const FitOptions& options, Fit& fit, const std::vector<double>& missing, Answers& answers,
                Blank& fitted) {
    constexpr double worth_a_size = 0.005;  // mm
    for (const files::Step& step : fit.c.steps) {
        const std::optional<double> size = pair_size(fit.c, step, options.own_tools);
        if (!size) continue;
        const int b = step.bends.front();
        const double wanted = next_setting(answers.pairs[b].size, *size, missing[b + 1]);
        if (std::abs(wanted - *size) < worth_a_size || !resize_pair(fit.c, step, wanted)) continue;
        for (std::size_t right = b + 1; right < fitted.bend_line.size(); ++right)
            fitted.bend_line[right] += missing[b + 1];
        fitted.length += missing[b + 1];
    }
}

void size_noses(const FitOptions& options, Fit& fit, Answers& answers) {
    constexpr double worth_a_nose = 0.02, least_nose = 0.2;  // mm; of the thickness
    for (const int tool : options.own_tools) {
        const std::optional<NoseFit> nose = nose_fit(fit.c, fit.job, tool, options.own_tools);
        if (!nose) continue;
        const double wanted = std::max(next_setting(answers.noses[tool], nose->nose_radius, nose->missing),
                                       least_nose * fit.c.thickness);
        if (std::abs(wanted - nose->nose_radius) >= worth_a_nose) change_nose(fit.c, tool, wanted);
    }
}

void correct(const FitOptions& options, Fit& fit, Answers& answers) {
    const strip::StripState& finished = fit.job.steps.back().stroke.free;
    const std::vector<double> missing = legs_missing(fit.c, fit.job.blank, finished);
    Blank blank = fitted_blank(fit.c, fit.job.blank, finished);
    lay_pairs(fit, missing, answers, blank);
    size_pairs(options, fit, missing, answers, blank);
    size_noses(options, fit, answers);
    blank = in_hundredths(blank);
    fit.c.blank_length = blank.length;
    fit.c.bend_lines = blank.bend_line;
    for (std::size_t i = 0; i < fit.c.steps.size(); ++i)
        if (fit.job.steps[i].stroke.outcome == stroke::Outcome::reached && is_last_of_its_bends(fit.c, i))
            correct_stop(fit.c, fit.job, fit.c.steps[i]);  // a stroke that closed before its stop misses more
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
        if (missing <= worth_overbend) continue;
        const std::string change = add_overbend(fit.c, fit.c.steps[i], missing, options.own_tools);
        if (change.empty()) continue;
        fit.changed_tools.push_back(change);
        changed = true;
    }
    return changed;
}

void say_why_not(Fit& fit) {
    fit.why_not =
        sentences(fit.c, with(fit.job.solved ? of_group(fit.job.findings, RuleGroup::part) : fit.job.findings,
                              Severity::stops));
    for (const Finding& f : fit.job.findings)
        if (fit.job.solved && f.rule == Rule::stop_not_reached) fit.why_not.push_back(sentence(fit.c, f));
}

void take(JobResult job, Fit& fit) {
    fit.job = std::move(job);
    ++fit.runs;
    fit.meets = fit.job.solved && std::all_of(fit.job.measures.begin(), fit.job.measures.end(),
                                              [](const MeasuredSize& m) { return m.within(); });
}

void run_once(const FitOptions& options, Fit& fit) {
    ProcessOptions how;
    if (options.progress)
        how.progress = [&](int step, double travel) { options.progress(fit.runs + 1, step, travel); };
    take(run_process(fit.c, how), fit);
}

// How far a run is from the middle of all tolerances.
struct Distance {
    int beyond = 0;      // sizes out of tolerance
    double worst = 0.0;  // over what is allowed
    double sum = 0.0;    // of squares
    bool nearer_than(const Distance& other) const {
        constexpr double worth_a_run = 0.98;
        return beyond < other.beyond || (beyond == other.beyond && sum < worth_a_run * other.sum);
    }
};
Distance distance_of(const Fit& fit) {
    if (!fit.job.solved) return {1 << 20, 1e300, 1e300};
    Distance d;
    for (const MeasuredSize& m : fit.job.measures) {
        if (m.reference) continue;
        const double ratio = std::abs(m.off()) / m.allowed;
        if (!m.within()) ++d.beyond;
        d.worst = std::max(d.worst, ratio), d.sum += ratio * ratio;
    }
    return d;
}

// What became of the sizes of tools of two bends.
void tell_sizes(const files::Case& given, const FitOptions& options, Fit& fit) {
    for (std::size_t i = 0; i < given.steps.size(); ++i) {
        const std::optional<double> was = pair_size(given, given.steps[i], options.own_tools);
        const std::optional<double> is = pair_size(fit.c, fit.c.steps[i], options.own_tools);
        if (was && is && std::abs(*is - *was) >= 0.01)
            fit.changed_tools.push_back(words(
                "'%s' and '%s' are now %.2f mm %s between their two bends, to match the simulated strip",
                fit.c.tools[fit.c.steps[i].punch].name.c_str(), fit.c.tools[fit.c.steps[i].die].name.c_str(),
                std::abs(*is - *was), *is > *was ? "longer" : "shorter"));
    }
    for (const int tool : options.own_tools) {
        const std::optional<double> was = nose_of(given.tools[tool]), is = nose_of(fit.c.tools[tool]);
        if (was && is && std::abs(*is - *was) >= 0.01)
            fit.changed_tools.push_back(
                words("'%s' now has a nose radius of %.2f mm, to match the drawn radius",
                      fit.c.tools[tool].name.c_str(), *is));
    }
}

}  // namespace

Fit fit_to_drawing(const files::Case& c, const FitOptions& options, const std::optional<JobResult>& first) {
    constexpr double near_the_middle = 0.2;  // of every tolerance
    Fit fit;
    fit.c = c;
    if (first)
        take(*first, fit);
    else
        run_once(options, fit);
    Fit best = fit;
    Answers answers;
    int no_nearer = 0;
    while (fit.job.solved && distance_of(fit).worst > near_the_middle && fit.runs < options.most_runs &&
           no_nearer < 2) {
        const bool retooled = give_overbend(options, fit);
        correct(options, fit, answers);
        run_once(options, fit);
        const bool nearer = retooled || distance_of(fit).nearer_than(distance_of(best));
        no_nearer = nearer ? 0 : no_nearer + 1;
        if (nearer) best = fit;
    }
    best.runs = fit.runs;
    best.c.blank_length = best.job.blank.length;  // written down, even when nothing had to be corrected
    best.c.bend_lines = best.job.blank.bend_line;
    tell_sizes(c, options, best);
    if (!best.meets) say_why_not(best);
    return best;
}

}  // namespace overbend::job
