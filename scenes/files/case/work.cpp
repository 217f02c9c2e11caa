#include "scenes/files/case/work.h"

#include <algorithm>
#include <cmath>
#include <type_traits>

#include "sim/material/layer_law.h"
#include "sim/plan/springback.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::files {

WorkKind outline_work() {
    WorkKind work;
    work.stroke = "this stroke";
    work.pad_travel = [](const Pad& pad, const Tool&) { return pad.spring.solid; };
    work.hold = [](const Case& c, const Blank& blank, const Step& step) {
        const tool::Box& box = std::get<OutlineTool>(c.tools[step.die].shape).outline.box();
        const double width = box.high.x() - box.low.x();
        return even_hold(blank, step, 0.5 * width, 0.25 * width, box.high.y() - box.low.y());
    };
    return work;
}

const std::array<WorkKind, 7>& work_kinds() {
    static const std::array<WorkKind, 7> all = {vee_work(), radius_work(), offset_work(), channel_work(),
                                                hem_work(), wiping_work(), outline_work()};
    return all;
}

const WorkKind& work_of(const Tool& tool) {
    const Work work = kind_of(tool.shape).work;
    return *std::find_if(work_kinds().begin(), work_kinds().end(),
                         [work](const WorkKind& kind) { return kind.work == work; });
}

const WorkKind& work_of(const Case& c, const Step& step) {
    const WorkKind& by_punch = work_of(c.tools[step.punch]);
    return by_punch.work == Work::any ? work_of(c.tools[step.die]) : by_punch;
}

double agreement(const Case& c, const Step& step) {
    return step.pad ? 0.0 : work_of(c, step).agreed;
}

const WorkKind* shared_work(const Tool& punch, const Tool& die) {
    const WorkKind& work = work_of(punch);
    return &work == &work_of(die) ? &work : nullptr;
}

void ProposedTools::add(const std::string& name, const ToolShape& shape, const std::string& reason) {
    tools.push_back({name, shape});
    reasons.push_back(reason);
}

namespace {

// Those that have a check of theirs.
struct PairCheck {
    int die_face = 1;
    double thickness = 0.0;

    void operator()(const tool::VeePunch& punch, const tool::VeeDie& die) const {
        tool::check_pair(punch, die.faces[die_face - 1], thickness);
    }
    template <class Punch, class Die>
    void operator()(const Punch& punch, const Die& die) const {
        const auto check = [](const auto& p, const auto& d, double t) -> decltype(tool::check_pair(p, d, t)) {
            tool::check_pair(p, d, t);
        };
        if constexpr (std::is_invocable_v<decltype(check), const Punch&, const Die&, double>)
            check(punch, die, thickness);
    }
};

}  // namespace

void check_pair(const Tool& punch, const Tool& die, int die_face, double thickness) {
    std::visit(PairCheck{die_face, thickness}, punch.shape, die.shape);
}

bool are_its_pair(const WorkKind& work, const Bend& left, const Bend& right) {
    return work.bends == 2 && work.alike == ((left.angle > 0.0) == (right.angle > 0.0));
}

bool have_like_angles(const Bend& left, const Bend& right) {
    return std::abs(std::abs(left.angle) - std::abs(right.angle)) <= 0.5 * degree;
}

double springback_curvature(const Case& c, const Blank& blank, int bend) {
    if (!blank.springback_curvature.empty()) return blank.springback_curvature[bend];
    const double hold = material::width_hold(c.width / c.thickness);
    return plan::springback_curvature(c.material, hold, c.thickness, c.part.bends[bend].inside_radius);
}

plan::StrokePath stroke_path(const Case& c, const Blank& blank, const Step& step) {
    const WorkKind& work = work_of(c.tools[step.punch]);
    const int bend = step.bends.front();
    plan::StrokePath path;
    path.thickness = c.thickness;
    path.free = path.loaded = std::abs(c.part.bends[bend].angle);
    path.half_allowance = blank.half_arc[bend];
    if (work.set_path) work.set_path(c, blank, step, path);
    const double arc = (c.part.bends[bend].inside_radius + 0.5 * c.thickness) * path.free;
    const double springing =
        work.springing_length ? work.springing_length(arc, c.thickness) : 0.5 * arc + plan::arm(path, 1.0);
    path.loaded = path.free + springback_curvature(c, blank, bend) * springing;
    if (work.most_loaded)
        path.loaded = std::max(path.free, std::min(path.loaded, work.most_loaded(c.tools[step.punch])));
    return path;
}

plan::StrokePath path_between(const Case& c, const Blank& blank, const std::vector<int>& bends,
                              const Tool& punch, const Tool& die) {
    Case with = c;
    with.tools = {punch, die};
    Step step;
    step.bends = bends;
    step.die = 1;
    return stroke_path(with, blank, step);
}

Hold even_hold(const Blank& blank, const Step& step, double reach, double half_span, double depth) {
    Hold hold;
    hold.reach_left = hold.reach_right = reach;
    hold.level_at = 0.5 * (blank.bend_line[step.bends.front()] + blank.bend_line[step.bends.back()]);
    hold.half_span = half_span;
    hold.at_x = step.shift;
    hold.depth = depth;
    return hold;
}

Hold hold_over(const Case& c, const Blank& blank, const Step& step, double opening, double shoulder_radius,
               double depth) {
    const double angle = std::abs(c.part.bends[step.bends.front()].angle);
    // Under load the strip runs along the flanks of the angle it has: its length between the shoulders.
    const double half_included = 0.5 * (pi - std::min(angle + 0.1, 2.6));
    const double reach = 0.5 * opening / std::sin(half_included) + shoulder_radius + 2.0 * c.thickness;
    return even_hold(blank, step, reach, 0.5 * opening + shoulder_radius, depth);
}

FlatsBeside flats_beside(const Case& c, const Step& step, int bend) {
    const double before = c.part.flats[bend], after = c.part.flats[bend + 1];
    return step.first == First::left ? FlatsBeside{before, after} : FlatsBeside{after, before};
}

double blank_to_the_right(const Step& step) {
    return step.first == First::left ? 1.0 : -1.0;
}

double half_core(double radius, double thickness, double angle) {
    return 0.5 * angle * (radius + 0.5 * thickness) + thickness;
}

double drawn_step(const Case& c, int left_bend) {
    const Bend &left = c.part.bends[left_bend], &right = c.part.bends[left_bend + 1];
    const double angle = std::abs(left.angle);
    const double radii = left.inside_radius + right.inside_radius + c.thickness;
    return c.part.flats[left_bend + 1] * std::sin(angle) + radii * (1.0 - std::cos(angle));
}

double hundredth(double value) {
    return std::round(100.0 * value) / 100.0;
}

double halves_up(double value) {
    return std::ceil(2.0 * value - 1e-9) / 2.0;
}

std::string pair_of_bends(const Case& c, int left_bend) {
    return "'" + c.part.bends[left_bend].name + "' and '" + c.part.bends[left_bend + 1].name + "'";
}

Shortfall closes_early(double reached, double needed) {
    if (reached >= needed) return {};
    return {words("it closes at %.1f degrees; %.1f are needed under load", reached / degree, needed / degree),
            1.0 - reached / needed};
}

double whole_degrees_up(double angle) {
    return std::ceil(angle / degree - 1e-9) * degree;
}

std::string overbend_words(const Tool& tool, const char* what, double angle) {
    return words("'%s' now has %s of %.1f degrees, for the overbend", tool.name.c_str(), what,
                 angle / degree);
}

double made_radius(const Case& c, const Step& step, double nose) {
    return std::max(nose, c.part.bends[step.bends.front()].inside_radius);
}

}  // namespace overbend::files
