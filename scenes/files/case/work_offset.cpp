// An offset: both bends of an S or a Z in one stroke between two stepped tools.

#include <cmath>

#include "scenes/files/case/work.h"

namespace overbend::files {

namespace {

Hold offset_hold(const Case& c, const Blank& blank, const Step& step) {
    const tool::OffsetDie& die = std::get<tool::OffsetDie>(c.tools[step.die].shape);
    const double t = c.thickness, beside = die.offset + 2.0 * t;
    return even_hold(blank, step, die.land + beside, beside, die.offset - 0.7 * t);
}

void offset_set_path(const Case& c, const Blank& blank, const Step& step, plan::StrokePath& path) {
    const tool::OffsetPunch& punch = std::get<tool::OffsetPunch>(c.tools[step.punch].shape);
    const tool::OffsetDie& die = std::get<tool::OffsetDie>(c.tools[step.die].shape);
    path.kind = plan::StrokeKind::offset;
    path.nose = punch.nose_radius;
    path.shoulder = die.shoulder_radius;
    path.offset = die.offset;
    path.run = die.offset / std::tan(die.angle);
    path.clearance = punch.clearance;
    path.middle = (blank.bend_line[step.bends.back()] + blank.half_arc[step.bends.back()]) -
                  (blank.bend_line[step.bends.front()] - blank.half_arc[step.bends.front()]);
}

}  // namespace

WorkKind offset_work() {
    WorkKind work;
    work.work = Work::offset;
    work.stroke = "an offset stroke";
    work.bends = 2;
    work.alike = false;
    work.hold = offset_hold;
    work.set_path = offset_set_path;
    return work;
}

}  // namespace overbend::files
