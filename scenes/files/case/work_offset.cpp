// An offset: both bends of an S or a Z in one stroke between two stepped tools.

#include <algorithm>
#include <cmath>

#include "scenes/files/case/work.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::files {

namespace {

using tool::OffsetDie;
using tool::OffsetPunch;

// What the step of a free S is over that of its tools, which stay open by a little: simulated strokes lie
// between.
constexpr double least_step = 0.5, most_step = 1.15;
// Proportions of proposed tools that gave good simulated strokes of strip from 0.5 to 2 mm; no other source.
// The step is less than the drawing's; the run through the mechanics sets it right.
constexpr double open_step = 0.76;
constexpr double offset_to_spare = 0.5 * degree;
constexpr double nose_over_radius = 0.6;  // at first; the fit sets it right

Hold offset_hold(const Case& c, const Blank& blank, const Step& step) {
    const OffsetDie& die = std::get<OffsetDie>(c.tools[step.die].shape);
    const double t = c.thickness, beside = die.offset + 2.0 * t;
    return even_hold(blank, step, die.land + beside, beside, die.offset - 0.7 * t);
}

void offset_set_path(const Case& c, const Blank& blank, const Step& step, plan::StrokePath& path) {
    const OffsetPunch& punch = std::get<OffsetPunch>(c.tools[step.punch].shape);
    const OffsetDie& die = std::get<OffsetDie>(c.tools[step.die].shape);
    path.kind = plan::StrokeKind::offset;
    path.nose = punch.nose_radius;
    path.shoulder = die.shoulder_radius;
    path.offset = die.offset;
    path.run = die.offset / std::tan(die.angle);
    path.clearance = punch.clearance;
    path.middle = (blank.bend_line[step.bends.back()] + blank.half_arc[step.bends.back()]) -
                  (blank.bend_line[step.bends.front()] - blank.half_arc[step.bends.front()]);
}

Shortfall offset_misfit(const Case& c, const Blank& blank, const Step& step) {
    const OffsetDie& die = std::get<OffsetDie>(c.tools[step.die].shape);
    const Shortfall early = closes_early(die.angle, stroke_path(c, blank, step).loaded);
    if (!early.why.empty()) return early;
    const double drawn = drawn_step(c, step.bends.front());
    if (die.offset >= least_step * drawn && die.offset <= most_step * drawn) return {};
    return {words("its offset is %.2f mm; this step needs %.2f mm", die.offset, drawn),
            std::min(1.0, std::abs(die.offset - drawn) / drawn)};
}

ProposedTools propose_offset(const Case& c, const Blank& blank, const std::vector<int>& bends) {
    const double t = c.thickness, step = drawn_step(c, bends.front());
    OffsetPunch punch;
    OffsetDie die;
    punch.offset = die.offset = hundredth(open_step * step);
    punch.nose_radius = die.shoulder_radius =
        hundredth(std::min(1.2 * t, nose_over_radius * c.part.bends[bends.front()].inside_radius));
    punch.root_radius = die.root_radius = 0.5 * t;
    punch.clearance = hundredth(closed_gap * t);
    punch.land = die.land = halves_up(15.0 * t);
    punch.height = 50.0, die.height = 40.0;

    punch.angle = die.angle = std::abs(c.part.bends[bends.front()].angle);
    const double loaded = path_between(c, blank, bends, {"punch", punch}, {"die", die}).loaded;
    punch.angle = die.angle =
        std::min(halves_up((loaded + offset_to_spare) / degree) * degree, 90.0 * degree);

    ProposedTools proposed;
    const std::string why =
        words("for a step of %.2f mm in one stroke, %s; %.4g degrees, %.1f under load", step,
              pair_of_bends(c, bends.front()).c_str(), die.angle / degree, loaded / degree);
    proposed.add("step punch", punch, why);
    proposed.add("step die", die, why);
    return proposed;
}

std::string offset_overbend(Tool& punch, Tool& die, int, double more, MayChange may) {
    if (!may.punch || !may.die) return "";
    double& lower = std::get<OffsetDie>(die.shape).angle;
    const double angle = std::min(lower + whole_degrees_up(more), 90.0 * degree);
    if (angle <= lower) return "";
    lower = std::get<OffsetPunch>(punch.shape).angle = angle;
    return overbend_words(die, "an angle", angle);
}

double* offset_nose(Tool& tool) {
    auto* punch = std::get_if<OffsetPunch>(&tool.shape);
    return punch ? &punch->nose_radius : nullptr;
}
double* offset_other_nose(Tool& tool) {
    auto* die = std::get_if<OffsetDie>(&tool.shape);
    return die ? &die->shoulder_radius : nullptr;
}

// The length of the sloped face.
double offset_pair_size(const Tool&, const Tool& lower) {
    const OffsetDie& die = std::get<OffsetDie>(lower.shape);
    return die.offset / std::sin(die.angle);
}

void resize_offset(Tool& punch, Tool& lower, Tool*, double size) {
    OffsetDie& die = std::get<OffsetDie>(lower.shape);
    die.offset = std::get<OffsetPunch>(punch.shape).offset = hundredth(size * std::sin(die.angle));
}

}  // namespace

WorkKind offset_work() {
    WorkKind work;
    work.work = Work::offset;
    work.stroke = "an offset stroke";
    work.agreed = 0.1 * degree;
    work.bends = 2;
    work.alike = false;
    work.hold = offset_hold;
    work.set_path = offset_set_path;
    // the moment turns round in the web, beside a short one
    work.springing_length = [](double arc, double thickness) { return arc + thickness; };
    work.misfit = offset_misfit;
    work.propose = propose_offset;
    work.nose = offset_nose;
    work.other_nose = offset_other_nose;
    work.proposed_for = above_below(0.0, 80.0 * degree);
    work.overbend = offset_overbend;
    work.pair_size = offset_pair_size;
    work.resize_pair = resize_offset;
    return work;
}

}  // namespace overbend::files
