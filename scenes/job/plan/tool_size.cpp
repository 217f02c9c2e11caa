#include "scenes/job/plan/tool_size.h"

#include <algorithm>
#include <cmath>

#include "scenes/files/case/tool_outline.h"
#include "scenes/files/case/work.h"
#include "scenes/job/run/legs.h"
#include "sim/errors.h"

namespace overbend::job {

double hundredth(double value) {
    return std::round(100.0 * value) / 100.0;
}

namespace {

struct OffsetPair {
    tool::OffsetPunch* punch;
    tool::OffsetDie* die;
};
std::optional<OffsetPair> offset_pair(std::vector<files::Tool>& tools, const files::Step& step) {
    auto* punch = std::get_if<tool::OffsetPunch>(&tools[step.punch].shape);
    auto* die = std::get_if<tool::OffsetDie>(&tools[step.die].shape);
    return punch && die ? std::optional<OffsetPair>({punch, die}) : std::nullopt;
}

struct Foot {
    tool::ChannelPunch* punch;
    tool::ChannelDie* die;
    files::Pad* pad;  // null: none
};
std::optional<Foot> foot_of(std::vector<files::Tool>& tools, const files::Step& step) {
    auto* punch = std::get_if<tool::ChannelPunch>(&tools[step.punch].shape);
    auto* die = std::get_if<tool::ChannelDie>(&tools[step.die].shape);
    if (!punch || !die) return {};
    return Foot{punch, die, step.pad ? std::get_if<files::Pad>(&tools[*step.pad].shape) : nullptr};
}

bool is_among(const std::vector<int>& tools, int tool) {
    return std::count(tools.begin(), tools.end(), tool) > 0;
}

}  // namespace

bool can_be_made(const files::Case& c, const files::Step& step) {
    const files::Tool &punch = c.tools[step.punch], &die = c.tools[step.die];
    const auto* vee = files::shape_of<tool::VeeDie>(die);
    try {
        files::tool_outline(punch, 1);
        for (int face = 1; face <= (vee ? static_cast<int>(vee->faces.size()) : 1); ++face)
            files::tool_outline(die, face);
        files::check_pair(punch, die, step.die_face, c.thickness);
    } catch (const OutOfRange&) {
        return false;
    }
    return true;
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
    std::vector<files::Tool> tools = c.tools;
    if (const auto pair = offset_pair(tools, step)) return pair->die->offset / std::sin(pair->die->angle);
    if (const auto foot = foot_of(tools, step)) return foot->punch->width;
    return {};
}

bool resize_pair(files::Case& c, const files::Step& step, double size) {
    files::Case with = c;
    if (const auto pair = offset_pair(with.tools, step)) {
        pair->punch->offset = pair->die->offset = hundredth(size * std::sin(pair->die->angle));
    } else if (const auto foot = foot_of(with.tools, step)) {
        const double more = hundredth(size) - foot->punch->width;
        foot->punch->width += more, foot->punch->shank_width += more;
        foot->die->die_opening += more, foot->die->width += more;
        if (foot->pad) foot->pad->block.width += more;
    } else {
        return false;
    }
    if (!can_be_made(with, step)) return false;
    c.tools = with.tools;
    return true;
}

double sagitta(double half_turn) {
    return 1.0 / std::cos(half_turn) - 1.0;
}

double radius_as_made(const Blank& blank, const strip::StripState& finished, int bend) {
    constexpr int places = 200;
    const double from = blank.flat_middle(bend), to = blank.flat_middle(bend + 1);
    const FlatLine before = flat_line(blank, finished, bend), after = flat_line(blank, finished, bend + 1);
    const Eigen::Vector2d corner = crossing(before, after);
    double nearest = 1e300;
    for (int i = 0; i <= places; ++i)
        nearest = std::min(nearest, (point_of(finished, from + (to - from) * i / places) - corner).norm());
    return nearest / sagitta(0.5 * std::acos(std::clamp(before.along.dot(after.along), -1.0, 1.0)));
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
    const auto* wedge = std::get_if<tool::VeePunch>(&c.tools[tool].shape);
    if (!wedge || !is_among(own_tools, tool)) return {};
    std::vector<Weighed> missing;
    for (const files::Step& step : c.steps) {
        if (step.punch != tool) continue;
        for (const int b : step.bends) {
            const files::Bend& bend = c.part.bends[b];
            const double made = radius_as_made(job.blank, job.steps.back().stroke.free, b);
            missing.push_back(
                {bend.inside_radius + 0.5 * c.thickness - made, sagitta(0.5 * std::abs(bend.angle))});
        }
    }
    if (missing.empty()) return {};
    return NoseFit{wedge->nose_radius, least_worst(missing)};
}

bool change_nose(files::Case& c, int tool, double radius) {
    files::Case with = c;
    std::get<tool::VeePunch>(with.tools[tool].shape).nose_radius = hundredth(radius);
    for (const files::Step& step : c.steps)
        if (step.punch == tool && !can_be_made(with, step)) return false;
    c.tools = with.tools;
    return true;
}

}  // namespace overbend::job
