#include "scenes/job/plan/tool_size.h"

#include <algorithm>
#include <cmath>

#include "scenes/files/case/tool_outline.h"
#include "scenes/files/case/work.h"
#include "scenes/job/run/step_tools.h"
#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

bool is_among(const std::vector<int>& tools, int tool) {
    return std::count(tools.begin(), tools.end(), tool) > 0;
}

// Whether the punch and the die of a step can be made as they are, and go together.
bool can_be_made(const files::Case& c, const files::Step& step) {
    const files::Tool &punch = c.tools[step.punch], &die = c.tools[step.die];
    try {
        files::tool_outline(punch, 1);
        for (int face = 1; face <= files::face_count(die); ++face) files::tool_outline(die, face);
        files::check_pair(punch, die, step.die_face, c.thickness);
    } catch (const OutOfRange&) {
        return false;
    }
    return true;
}

}  // namespace

std::string add_overbend(files::Case& c, const files::Step& step, double missing,
                         const std::vector<int>& own_tools) {
    constexpr double on_top = 0.5 * degree;
    files::Case with = c;
    files::Tool &punch = with.tools[step.punch], &die = with.tools[step.die];
    const files::WorkKind* work = files::shared_work(punch, die);
    if (!work || !work->overbend) return "";
    const files::MayChange may{is_among(own_tools, step.punch), is_among(own_tools, step.die)};
    const std::string change = work->overbend(punch, die, step.die_face, missing + on_top, may);
    if (change.empty() || !can_be_made(with, step)) return "";
    c.tools = with.tools;
    return change;
}

std::optional<double> pair_size(const files::Case& c, const files::Step& step,
                                const std::vector<int>& own_tools) {
    const auto alone = [&](int tool) {
        return std::count_if(c.steps.begin(), c.steps.end(), [tool](const files::Step& s) {
                   return s.punch == tool || s.die == tool || s.pad == tool;
               }) == 1;
    };
    const auto free = [&](int tool) { return is_among(own_tools, tool) && alone(tool); };
    if (step.bends.size() != 2 || !free(step.punch) || !free(step.die) || (step.pad && !free(*step.pad)))
        return {};
    const files::Tool &punch = c.tools[step.punch], &die = c.tools[step.die];
    const files::WorkKind* work = files::shared_work(punch, die);
    if (!work || !work->pair_size) return {};
    return work->pair_size(punch, die);
}

bool resize_pair(files::Case& c, const files::Step& step, double size) {
    files::Case with = c;
    files::Tool &punch = with.tools[step.punch], &die = with.tools[step.die];
    const files::WorkKind* work = files::shared_work(punch, die);
    if (!work || !work->resize_pair) return false;
    work->resize_pair(punch, die, step.pad ? &with.tools[*step.pad] : nullptr, size);
    if (!can_be_made(with, step)) return false;
    c.tools = with.tools;
    return true;
}

double least_worst(const std::vector<Weighed>& values) {
    double best = values.empty() ? 0.0 : values.front().value, worst = 0.0;
    for (const Weighed& a : values)
        for (const Weighed& b : values) {
            const double between = (a.weight * a.value + b.weight * b.value) / (a.weight + b.weight);
            const double off = a.weight * std::abs(a.value - between);
            if (off > worst) worst = off, best = between;
        }
    return best;
}

std::optional<NoseFit> nose_fit(const files::Case& c, const JobResult& job, int tool,
                                const std::vector<int>& own_tools) {
    const std::optional<double> nose = nose_of(c.tools[tool]);
    if (!nose || !is_among(own_tools, tool)) return {};
    std::vector<Weighed> missing;
    for (const files::Step& step : c.steps) {
        if (step.punch != tool) continue;
        for (const MeasuredSize& m : job.measures)
            if (m.what == SizeKind::radius && !m.reference &&
                std::count(step.bends.begin(), step.bends.end(), m.index) > 0)
                missing.push_back({c.part.bends[m.index].inside_radius - m.made, 1.0 / m.allowed});
    }
    if (missing.empty()) return {};
    return NoseFit{*nose, least_worst(missing)};
}

bool change_nose(files::Case& c, int tool, double radius) {
    files::Case with = c;
    const files::WorkKind& work = files::work_of(with.tools[tool]);
    *work.nose(with.tools[tool]) = files::hundredth(radius);
    for (const files::Step& step : c.steps)
        if (step.punch == tool && work.other_nose)
            *work.other_nose(with.tools[step.die]) = files::hundredth(radius);
    for (const files::Step& step : c.steps)
        if (step.punch == tool && !can_be_made(with, step)) return false;
    c.tools = with.tools;
    return true;
}

}  // namespace overbend::job
