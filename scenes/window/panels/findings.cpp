#include "scenes/window/panels/findings.h"

#include <algorithm>
#include <cmath>

#include "scenes/job/run/job_rules.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

enum class Instant { stop, free };

class Collected {
  public:
    explicit Collected(const RanJob& job) : job_(job) {}

    void add(FindingWeight weight, const std::string& words, const std::optional<FindingPlace>& place = {}) {
        const bool told =
            std::any_of(list_.begin(), list_.end(), [&](const Finding& f) { return f.words == words; });
        if (!told) list_.push_back({weight, words, place});
    }

    // A step of the job as it was run; its bend marks the place.
    std::optional<FindingPlace> at_step(int step, Instant instant, int bend = -1) const {
        const stroke::Recording* recording = recorded(step);
        if (!recording) return {};
        FindingPlace place{step, static_cast<int>(recording->states.size()) - 1, {}};
        if (instant == Instant::stop) place.state = state_at(*recording, 1e300);
        const std::vector<int>& bends = job_.c.steps[step].bends;
        mark_bend(place, *recording, bend >= 0 ? bend : bends.empty() ? -1 : bends.front());
        return place;
    }
    std::optional<FindingPlace> at_travel(int step, double travel) const {
        std::optional<FindingPlace> place = at_step(step, Instant::stop);
        if (!place) return {};
        const stroke::Recording& recording = *recorded(step);
        place->state = state_at(recording, travel);
        const std::vector<int>& bends = job_.c.steps[step].bends;
        mark_bend(*place, recording, bends.empty() ? -1 : bends.front());
        return place;
    }
    // The last step that works on a bend, when the strip is free.
    std::optional<FindingPlace> at_bend(int bend) const {
        for (int i = static_cast<int>(job_.result.steps.size()) - 1; i >= 0; --i) {
            const std::vector<int>& bends = job_.c.steps[i].bends;
            if (std::find(bends.begin(), bends.end(), bend) != bends.end())
                return at_step(i, Instant::free, bend);
        }
        return {};
    }

    std::vector<Finding> take() {
        std::stable_sort(list_.begin(), list_.end(),
                         [](const Finding& a, const Finding& b) { return a.weight < b.weight; });
        return std::move(list_);
    }

  private:
    const stroke::Recording* recorded(int step) const {
        if (step < 0 || step >= static_cast<int>(job_.result.steps.size())) return nullptr;
        const stroke::Recording& recording = job_.result.steps[step].stroke.recording;
        return recording.states.empty() ? nullptr : &recording;
    }
    // While it is pressed, the state with the travel nearest to that one.
    static int state_at(const stroke::Recording& recording, double travel) {
        int best = 0;
        for (int i = 0; i < static_cast<int>(recording.states.size()); ++i) {
            const stroke::State& s = recording.states[i];
            if (s.phase != stroke::Phase::pressing && s.phase != stroke::Phase::held) continue;
            if (std::abs(s.travel - travel) <= std::abs(recording.states[best].travel - travel)) best = i;
        }
        return best;
    }
    void mark_bend(FindingPlace& place, const stroke::Recording& recording, int bend) const {
        const std::vector<double>& lines = job_.result.blank.bend_line;
        if (bend < 0 || bend >= static_cast<int>(lines.size())) return;
        place.at = picture::spot_on(recording, recording.states[place.state], lines[bend]).at;
    }

    const RanJob& job_;
    std::vector<Finding> list_;
};

void add_strokes(const RanJob& job, Collected& all) {
    for (int i = 0; i < static_cast<int>(job.result.steps.size()); ++i) {
        const job::StepResult& step = job.result.steps[i];
        const std::string whose = "step '" + step.name + "': ";
        if (step.stroke.outcome != stroke::Outcome::reached)
            all.add(FindingWeight::against, whose + step.stroke.reason, all.at_step(i, Instant::stop));
        for (const job::Interference& f : step.interferences) {
            const int state = f.deepest.state >= 0 ? f.deepest.state : f.first_state;
            all.add(FindingWeight::against, whose + f.words, FindingPlace{i, state, f.deepest.at});
        }
        const double force = step.stroke.peak_force * job.c.width / 1000.0;
        if (job.c.press && force > job.c.press->force)
            all.add(FindingWeight::against,
                    whose + words("%.1f kN is more than the press's %.1f kN", force, job.c.press->force),
                    all.at_step(i, Instant::stop));
        for (const std::string& w : step.warnings)
            all.add(FindingWeight::caution, whose + w, all.at_step(i, Instant::stop));
        for (const std::string& w : step.remarks)
            all.add(FindingWeight::remark, whose + w, FindingPlace{i, 0, {}});
    }
}

// What the job says of a bend's angle begins with its name.
void add_bends(const RanJob& job, Collected& all) {
    for (std::size_t b = 0; b < job.result.finished_angle.size(); ++b) {
        const files::Bend& bend = job.c.part.bends[b];
        const double off = std::abs(job.result.finished_angle[b] - bend.angle) / degree;
        if (off <= job.c.part.angle_tolerance / degree) continue;
        const std::string beginning = "bend '" + bend.name + "': ";
        for (const std::string& f : job.result.findings)
            if (f.rfind(beginning, 0) == 0 && f.find("degrees instead of") != std::string::npos)
                all.add(FindingWeight::against, f, all.at_bend(static_cast<int>(b)));
    }
}

void add_rules(const RanJob& job, Collected& all) {
    for (const plan::RuleFinding& f : job.result.rules.findings) {
        const FindingWeight weight = f.stops ? FindingWeight::against : FindingWeight::caution;
        std::optional<FindingPlace> place;
        if (f.place == plan::RulePlace::bend) place = all.at_bend(f.index);
        if (f.place == plan::RulePlace::step) place = all.at_step(f.index, Instant::stop);
        all.add(weight, job::place_words(job.c, f) + ": " + f.words, place);
    }
}

FindingWeight weight_of(shop::Verdict verdict) {
    return verdict == shop::Verdict::over ? FindingWeight::against : FindingWeight::caution;
}

void add_shop(const RanJob& job, Collected& all) {
    for (const job::StrokeOnPress& s : job.shop.strokes)
        for (const shop::Check& check : s.checks) {
            const bool told = check.what == "force" && check.verdict == shop::Verdict::over;
            if (check.verdict == shop::Verdict::fine || told) continue;
            all.add(weight_of(check.verdict), "step '" + job.c.steps[s.step].name + "': " + check.words,
                    all.at_step(s.step, Instant::stop));
        }
    for (const job::ToolInShop& t : job.shop.tools) {
        const std::string whose = "tool '" + job.c.tools[t.tool].name + "': ";
        std::optional<FindingPlace> place;
        if (t.contact) place = all.at_step(t.contact->step, Instant::stop);
        if (t.section) place = all.at_travel(t.section->step, t.section->travel);
        for (const shop::Check& check : t.checks)
            if (check.verdict != shop::Verdict::fine)
                all.add(weight_of(check.verdict), whose + check.words, place);
        for (const std::string& mend : t.mends) all.add(FindingWeight::caution, whose + mend, place);
    }
}

}  // namespace

std::vector<Finding> findings_of(const RanJob& job) {
    Collected all(job);
    if (!job.wrong.empty()) all.add(FindingWeight::against, job.wrong);
    add_strokes(job, all);
    add_bends(job, all);
    add_rules(job, all);
    add_shop(job, all);
    for (const std::string& f : job.result.findings) all.add(FindingWeight::against, f);
    for (const std::string& f : job.shop.cautions) all.add(FindingWeight::caution, f);
    for (const auto* list : {&job.result.rules.not_checked, &job.shop.not_checked})
        for (const std::string& f : *list) all.add(FindingWeight::remark, "not checked: " + f);
    return all.take();
}

}  // namespace overbend::window
