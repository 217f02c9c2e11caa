#include <algorithm>

#include "scenes/files/case/work.h"
#include "scenes/job/run/strip_bends.h"
#include "sim/errors.h"
#include "sim/tool/figures.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

// Between the walls, with a quarter of the thickness beside it, on the floor when its spring is solid.
files::Tool make_pad(const ChannelBend& b, double opening, double height) {
    const double play = 0.25 * b.thickness, width = opening - 2.0 * play;
    const double radius = std::min(play, 0.25 * width);
    return {"pad", files::Pad{{width, radius, radius, height}, *b.pad}};
}

}  // namespace

StripStroke channel_stroke(const ChannelBend& b) {
    const double t = b.thickness, clearance = b.clearance.value_or(1.1 * t);
    const double flange = b.flange.value_or(b.depth + b.shoulder_radius + t);
    at_least("flange", flange, b.shoulder_radius + clearance + 2.0 * t,
             "does not reach over the die's shoulder");
    if (b.depth <= b.shoulder_radius)
        throw OutOfRange("channel depth", tool::mm(b.depth) + " ends within the shoulders' arcs",
                         "give more than " + tool::mm(b.shoulder_radius));

    const double middle = 0.5 * b.punch_width + flange;
    StripCase s = strip_case(b, 2.0 * middle);
    const double half_arc = files::half_core(b.corner_radius, t, 0.5 * pi) - t;
    const double from_middle = 0.5 * b.punch_width - b.corner_radius + half_arc;
    add_bend(s, "left bend", 0.5 * pi, middle - from_middle, half_arc);
    add_bend(s, "right bend", 0.5 * pi, middle + from_middle, half_arc);

    const double opening = b.punch_width + 2.0 * clearance,
                 foot = b.corner_radius + b.depth + flange + 4.0 * t;
    const double pad_height = b.pad ? std::max(3.0 * t, 0.25 * opening) : 0.0, depth = b.depth + pad_height;
    s.job.tools = {
        {"punch", tool::ChannelPunch{b.punch_width, b.corner_radius, 0.0, foot, b.punch_width,
                                     tool::Shank::middle, foot + 4.0 * t}},
        {"die", tool::ChannelDie{opening, b.shoulder_radius, depth, 0.0,
                                 opening + 4.0 * b.shoulder_radius + 2.0 * flange, depth + 6.0 * t}}};
    if (b.pad) s.job.tools.push_back(make_pad(b, opening, pad_height));
    return set_up(s, only_step(s));
}

}  // namespace overbend::job
