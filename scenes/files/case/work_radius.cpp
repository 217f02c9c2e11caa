// A stroke of radius tools: one bend, bottomed in a groove of a stated radius.

#include "scenes/files/case/work.h"

namespace overbend::files {

namespace {

Hold radius_hold(const Case& c, const Blank& blank, const Step& step) {
    const tool::RadiusDie& die = std::get<tool::RadiusDie>(c.tools[step.die].shape);
    return hold_over(c, blank, step, die.die_opening, die.shoulder_radius,
                     tool::groove_depth(die) - 0.5 * c.thickness);
}

}  // namespace

WorkKind radius_work() {
    WorkKind work;
    work.work = Work::radius;
    work.stroke = "a stroke of radius tools";
    work.bends = 1;
    work.hold = radius_hold;
    return work;
}

}  // namespace overbend::files
