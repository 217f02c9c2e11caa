#include "scenes/job/plan/propose_pair.h"

#include <algorithm>
#include <cmath>

#include "scenes/job/plan/fitting_pairs.h"
#include "scenes/job/plan/stroke_geometry.h"
#include "scenes/job/plan/tool_size.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

// Proportions that gave good simulated strokes of strip from 0.5 to 2 mm; no other source.
constexpr double closed_gap = 1.05;  // thicknesses between the faces of closed tools
constexpr double open_step = 0.76;   // of the drawn step, see propose_offset
constexpr double offset_to_spare = 0.5 * degree;
constexpr double corner_over_radius = 0.8;
constexpr double relief = 2.0 * degree;
constexpr double shoulder_thicknesses = 2.0;
constexpr double pad_pressure = 0.033;  // preload N/mm over tensile strength times thickness

double half(double value) {
    return std::ceil(2.0 * value - 1e-9) / 2.0;
}

void add(ProposedTools& proposed, const std::string& name, const decltype(files::Tool::shape)& shape,
         const std::string& reason) {
    proposed.tools.push_back({name, shape});
    proposed.reasons.push_back(reason);
}

std::string both(const files::Case& c, int left) {
    return "'" + c.part.bends[left].name + "' and '" + c.part.bends[left + 1].name + "'";
}

// How far a flange that closes over the mouth reaches inwards from its wall's inner face, and how high its
// inner face stands above the floor's; none: reach 0.
struct Overhang {
    double reach = 0.0, height = 1e300;
};
Overhang overhang(const files::Case& c, int bend, int outwards) {
    const int next = bend + outwards, bends = static_cast<int>(c.part.bends.size());
    if (next < 0 || next >= bends) return {};
    const files::Bend &own = c.part.bends[bend], &over = c.part.bends[next];
    if ((own.angle > 0.0) != (over.angle > 0.0)) return {};  // turned outwards
    const int wall = outwards > 0 ? bend + 1 : bend, flange = outwards > 0 ? next + 1 : next;
    const double angle = std::min(std::abs(over.angle), 0.5 * pi);
    return {c.part.flats[flange] * std::sin(angle) + over.inside_radius,
            c.part.flats[wall] + own.inside_radius + over.inside_radius};
}

}  // namespace

ProposedTools propose_offset(const files::Case& c, const Blank& blank, int left_bend) {
    ProposedTools proposed;
    const double t = c.thickness, step = drawn_step(c, left_bend);
    tool::OffsetPunch punch;
    tool::OffsetDie die;
    punch.offset = die.offset = hundredth(open_step * step);
    punch.nose_radius = die.shoulder_radius = hundredth(1.2 * t);
    punch.root_radius = die.root_radius = 0.5 * t;
    punch.clearance = hundredth(closed_gap * t);
    punch.land = die.land = half(15.0 * t);
    punch.height = 50.0, die.height = 40.0;

    punch.angle = die.angle = std::abs(c.part.bends[left_bend].angle);
    const double loaded =
        path_between(c, blank, {left_bend, left_bend + 1}, {"punch", punch}, {"die", die}).loaded;
    punch.angle = die.angle = std::min(half((loaded + offset_to_spare) / degree) * degree, 90.0 * degree);

    const std::string why = words("for a step of %.2f mm in one stroke, %s; %.4g degrees, %.1f under load",
                                  step, both(c, left_bend).c_str(), die.angle / degree, loaded / degree);
    add(proposed, "step punch", punch, why);
    add(proposed, "step die", die, why);
    return proposed;
}

ProposedTools propose_channel(const files::Case& c, int left_bend) {
    ProposedTools proposed;
    const double t = c.thickness, radius = c.part.bends[left_bend].inside_radius;
    const double inside = c.part.flats[left_bend + 1] + 2.0 * radius;
    tool::ChannelPunch foot;
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
    if (foot.shank_width < 2.0 * t || top <= 0.0) {
        proposed.cannot.push_back(
            words("bends %s: the gap between the flanges is too narrow for the shank of a punch",
                  both(c, left_bend).c_str()));
        return proposed;
    }

    tool::ChannelDie die;
    die.die_opening = hundredth(foot.width + 2.0 * closed_gap * t);
    die.shoulder_radius = half(shoulder_thicknesses * t);
    const double travel = half(die.shoulder_radius + foot.corner_radius + 6.5 * t);
    files::Pad pad;
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
    add(proposed, "channel foot", foot,
        words("for a channel %.2f mm wide inside in one stroke, %s%s", inside, both(c, left_bend).c_str(),
              shape));
    add(proposed, "channel block", die, words("%.2f thicknesses beside the foot", closed_gap));
    add(proposed, "floor pad", pad, "keeps the floor flat, which would bow after release");
    return proposed;
}

}  // namespace overbend::job
