// A channel: two bends of one sense in one stroke round a flat foot, over a floor or a pad on a spring.

#include <algorithm>

#include "scenes/files/case/strict_table.h"
#include "scenes/files/case/work.h"

namespace overbend::files {

namespace {

const Pad* pad_of(const Case& c, const Step& step) {
    return step.pad ? shape_of<Pad>(c.tools[*step.pad]) : nullptr;
}

Hold channel_hold(const Case& c, const Blank& blank, const Step& step) {
    const tool::ChannelDie& die = std::get<tool::ChannelDie>(c.tools[step.die].shape);
    const Pad* pad = pad_of(c, step);
    const double t = c.thickness, depth = pad ? pad_travel(*pad, die) : die.depth;
    return even_hold(blank, step, depth + 2.0 * die.shoulder_radius + 4.0 * t, 0.5 * die.die_opening,
                     depth - 0.7 * t);
}

void channel_set_path(const Case& c, const Blank&, const Step& step, plan::StrokePath& path) {
    const tool::ChannelPunch& punch = std::get<tool::ChannelPunch>(c.tools[step.punch].shape);
    const tool::ChannelDie& die = std::get<tool::ChannelDie>(c.tools[step.die].shape);
    path.kind = plan::StrokeKind::channel;
    path.nose = made_radius(c, step, punch.corner_radius);
    path.nose_x = 0.5 * punch.width - punch.corner_radius;
    // a wall bent wider than the foot's corner stands where the drawing has it
    if (path.nose > punch.corner_radius) path.nose_x = 0.5 * c.part.flats[step.bends.back()];
    path.shoulder = die.shoulder_radius;
    path.shoulder_x = 0.5 * die.die_opening + die.shoulder_radius;
    path.lowest = -die.depth + die.floor_crown + c.thickness;
    if (const Pad* pad = pad_of(c, step)) path.lowest = std::max(path.lowest, -pad_travel(*pad, die));
}

void channel_check_step(const StrictTable& table, const Step& step, const Case& job) {
    const auto* channel = shape_of<tool::ChannelDie>(job.tools[step.die]);
    const Pad* pad = pad_of(job, step);
    if (!channel || !pad) return;
    if (pad->block.width >= channel->die_opening)
        table.complain("pad",
                       "it is " + worked_out(pad->block.width) +
                           " mm wide and does not fit in an opening of " + worked_out(channel->die_opening) +
                           " mm",
                       "give less width_mm");
    if (pad->block.height >= channel->depth)
        table.complain("pad",
                       "it is " + worked_out(pad->block.height) + " mm high and has no travel in a channel " +
                           worked_out(channel->depth) + " mm deep",
                       "give less height_mm, or a deeper channel");
}

}  // namespace

double pad_travel(const Pad& pad, const tool::ChannelDie& die) {
    return std::min(pad.spring.solid, die.depth - pad.block.height);
}

WorkKind channel_work() {
    WorkKind work;
    work.work = Work::channel;
    work.stroke = "a channel stroke";
    work.bends = 2;
    work.takes_pad = true;
    work.check_step = channel_check_step;
    work.hold = channel_hold;
    work.set_path = channel_set_path;
    return work;
}

}  // namespace overbend::files
