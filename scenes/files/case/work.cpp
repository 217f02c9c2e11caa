#include "scenes/files/case/work.h"

#include <algorithm>
#include <cmath>
#include <type_traits>

#include "sim/units.h"

namespace overbend::files {

WorkKind outline_work() {
    WorkKind work;
    work.stroke = "this stroke";
    work.takes_pad = true;
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

double made_radius(const Case& c, const Step& step, double nose) {
    return std::max(nose, c.part.bends[step.bends.front()].inside_radius);
}

}  // namespace overbend::files
