// A channel: two bends of one sense in one stroke round a flat foot, over a floor or a pad on a spring.

#include <algorithm>
#include <cmath>

#include "scenes/files/case/strict_table.h"
#include "scenes/files/case/work.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::files {

namespace {

using tool::ChannelDie;
using tool::ChannelPunch;

// Proportions of proposed tools that gave good simulated strokes of strip from 0.5 to 2 mm; no other source.
constexpr double corner_over_radius = 0.8;
constexpr double relief = 2.0 * degree;
constexpr double shoulder_thicknesses = 2.0;
constexpr double pad_pressure = 0.033;  // preload N/mm over tensile strength times thickness

const Pad* pad_of(const Case& c, const Step& step) {
    return step.pad ? shape_of<Pad>(c.tools[*step.pad]) : nullptr;
}

double channel_pad_travel(const Pad& pad, const Tool& die) {
    const auto* channel = shape_of<ChannelDie>(die);
    if (!channel) return pad.spring.solid;
    return pad.block.width < channel->die_opening
               ? std::max(0.0, std::min(pad.spring.solid, channel->depth - pad.block.height))
               : 0.0;
}

Hold channel_hold(const Case& c, const Blank& blank, const Step& step) {
    const Tool& tool = c.tools[step.die];
    const ChannelDie& die = std::get<ChannelDie>(tool.shape);
    const Pad* pad = pad_of(c, step);
    const double t = c.thickness, depth = pad ? channel_pad_travel(*pad, tool) : die.depth;
    return even_hold(blank, step, depth + 2.0 * die.shoulder_radius + 4.0 * t, 0.5 * die.die_opening,
                     depth - 0.7 * t);
}

void channel_set_path(const Case& c, const Blank&, const Step& step, plan::StrokePath& path) {
    const ChannelPunch& punch = std::get<ChannelPunch>(c.tools[step.punch].shape);
    const ChannelDie& die = std::get<ChannelDie>(c.tools[step.die].shape);
    path.kind = plan::StrokeKind::channel;
    path.nose = made_radius(c, step, punch.corner_radius);
    path.nose_x = 0.5 * punch.width - punch.corner_radius;
    // a wall bent wider than the foot's corner stands where the drawing has it
    if (path.nose > punch.corner_radius) path.nose_x = 0.5 * c.part.flats[step.bends.back()];
    path.shoulder = die.shoulder_radius;
    path.shoulder_x = 0.5 * die.die_opening + die.shoulder_radius;
    path.lowest = -die.depth + die.floor_crown + c.thickness;
    if (const Pad* pad = pad_of(c, step))
        path.lowest = std::max(path.lowest, -channel_pad_travel(*pad, c.tools[step.die]));
}

void channel_check_step(const StrictTable& table, const Step& step, const Case& job) {
    const auto* channel = shape_of<ChannelDie>(job.tools[step.die]);
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

double width_inside(const Case& c, int left_bend) {
    return c.part.flats[left_bend + 1] + 2.0 * c.part.bends[left_bend].inside_radius;
}

Shortfall channel_misfit(const Case& c, const Blank&, const Step& step) {
    const ChannelPunch& foot = std::get<ChannelPunch>(c.tools[step.punch].shape);
    const Bend& bend = c.part.bends[step.bends.front()];
    if (std::abs(bend.angle) > 91.0 * degree) return {"it can press its walls to at most 90 degrees"};
    const double inside = width_inside(c, step.bends.front());
    if (std::abs(foot.width - inside) <= c.thickness) return {};
    return {words("its foot is %.2f mm wide; this channel is %.2f mm wide inside", foot.width, inside),
            std::min(1.0, std::abs(foot.width - inside) / inside)};
}

// How far a flange that closes over the mouth reaches inwards from its wall's inner face, and how high its
// inner face stands above the floor's; none: reach 0.
struct Overhang {
    double reach = 0.0, height = 1e300;
};
Overhang overhang(const Case& c, int bend, int outwards) {
    const int next = bend + outwards, bends = static_cast<int>(c.part.bends.size());
    if (next < 0 || next >= bends) return {};
    const Bend &own = c.part.bends[bend], &over = c.part.bends[next];
    if ((own.angle > 0.0) != (over.angle > 0.0)) return {};  // turned outwards
    const int wall = outwards > 0 ? bend + 1 : bend, flange = outwards > 0 ? next + 1 : next;
    const double angle = std::min(std::abs(over.angle), 0.5 * pi);
    return {c.part.flats[flange] * std::sin(angle) + over.inside_radius,
            c.part.flats[wall] + own.inside_radius + over.inside_radius};
}

// Where a wall ends in a flange bent inwards, over the mouth, the foot is lower than that flange and its
// shank stands to the other side, which makes an L of it. None: both walls have one and no shank fits
// between.
std::optional<ChannelPunch> proposed_foot(const Case& c, int left_bend) {
    const double t = c.thickness, radius = c.part.bends[left_bend].inside_radius;
    const double inside = width_inside(c, left_bend);
    ChannelPunch foot;
    foot.width = hundredth(inside - 0.1 * t);
    foot.corner_radius = hundredth(std::min(corner_over_radius * radius, 0.45 * foot.width));
    foot.side_relief = relief;

    const Overhang left = overhang(c, left_bend, -1), right = overhang(c, left_bend + 1, 1);
    const double room = std::min(left.height, right.height);
    foot.foot_height = room < 1e200 ? 0.65 * room : std::max(foot.width, 10.0 * t);
    foot.foot_height = std::max(foot.foot_height, 1.5 * foot.corner_radius + t);
    const double top = foot.width - 2.0 * foot.foot_height * std::tan(relief);
    foot.shank_width = std::floor(10.0 * (top - std::max(left.reach, right.reach) - 1.5 * t)) / 10.0;
    if (left.reach > 0.0 && right.reach > 0.0)
        foot.shank_width = top - left.reach - right.reach - 2.0 * t;
    else if (left.reach > 0.0)
        foot.shank = tool::Shank::right;
    else if (right.reach > 0.0)
        foot.shank = tool::Shank::left;
    else
        foot.shank_width = top;
    foot.height = std::max(60.0, foot.foot_height + 50.0);
    if (foot.shank_width < 2.0 * t || top <= 0.0) return std::nullopt;
    return foot;
}

// A pad keeps the floor flat.
ProposedTools propose_channel(const Case& c, const Blank&, const std::vector<int>& bends) {
    ProposedTools proposed;
    const std::optional<ChannelPunch> made = proposed_foot(c, bends.front());
    const std::string both = pair_of_bends(c, bends.front());
    if (!made) {
        proposed.cannot.push_back("bends " + both +
                                  ": the gap between the flanges is too narrow for the shank of a punch");
        return proposed;
    }
    const double t = c.thickness;
    const ChannelPunch& foot = *made;
    ChannelDie die;
    die.die_opening = hundredth(foot.width + 2.0 * closed_gap * t);
    die.shoulder_radius = halves_up(shoulder_thicknesses * t);
    const double travel = halves_up(die.shoulder_radius + foot.corner_radius + 6.5 * t);
    Pad pad;
    pad.block.width = hundredth(foot.width - 0.4 * t);
    pad.block.left_radius = pad.block.right_radius = 0.5 * t;
    pad.block.height = 12.0;
    const double strength = c.material.tensile_strength > 0.0 ? c.material.tensile_strength : 400.0;
    pad.spring.preload = std::round(pad_pressure * strength * t);
    pad.spring.rate = 1.0;
    die.depth = pad.block.height + travel;
    die.width = die.die_opening + 30.0;
    die.height = die.depth + 20.0;

    const char* shape = foot.shank == tool::Shank::middle
                            ? ""
                            : ", with its shank to one side to clear the flange over the mouth";
    proposed.add("channel foot", foot,
                 words("for a channel %.2f mm wide inside in one stroke, %s%s",
                       width_inside(c, bends.front()), both.c_str(), shape));
    proposed.add("channel block", die, words("%.2f thicknesses beside the foot", closed_gap));
    proposed.add("floor pad", pad, "keeps the floor flat, which would bow after release");
    return proposed;
}

std::string channel_overbend(Tool& punch, Tool&, int, double more, MayChange may) {
    constexpr double most_relief = 15.0 * degree;  // more leaves too little of a foot
    ChannelPunch& foot = std::get<ChannelPunch>(punch.shape);
    const double wider = foot.side_relief + whole_degrees_up(more);
    if (!may.punch || wider > most_relief) return "";
    foot.shank_width -= 2.0 * foot.foot_height * (std::tan(wider) - std::tan(foot.side_relief));
    foot.side_relief = wider;
    return overbend_words(punch, "a side relief", wider);
}

void resize_channel(Tool& punch, Tool& lower, Tool* pad, double size) {
    ChannelPunch& foot = std::get<ChannelPunch>(punch.shape);
    ChannelDie& die = std::get<ChannelDie>(lower.shape);
    const double more = hundredth(size) - foot.width;
    foot.width += more, foot.shank_width += more;
    die.die_opening += more, die.width += more;
    if (pad) std::get<Pad>(pad->shape).block.width += more;
}

}  // namespace

WorkKind channel_work() {
    WorkKind work;
    work.work = Work::channel;
    work.stroke = "a channel stroke";
    work.agreed = 0.35 * degree;
    work.bends = 2;
    work.pad_travel = channel_pad_travel;
    work.check_step = channel_check_step;
    work.hold = channel_hold;
    work.set_path = channel_set_path;
    // over the shoulder the wall is bent back: simulated channels lie from 0.23 to 0.43
    work.springing_length = [](double arc, double) { return 0.25 * arc; };
    // a wall goes no further than the foot's side
    work.most_loaded = [](const Tool& punch) {
        return 0.5 * pi + std::get<ChannelPunch>(punch.shape).side_relief;
    };
    work.misfit = channel_misfit;
    work.propose = propose_channel;
    work.proposed_for = above_below(89.0 * degree, 91.0 * degree);
    work.overbend = channel_overbend;
    work.pair_size = [](const Tool& punch, const Tool&) { return std::get<ChannelPunch>(punch.shape).width; };
    work.resize_pair = resize_channel;
    return work;
}

}  // namespace overbend::files
