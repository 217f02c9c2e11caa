// Wiping: a flange bent down over the edge of a block by a punch that passes beside it, the strip held by a
// clamp. The block's wall stands at x = 0.

#include <algorithm>
#include <cmath>

#include "scenes/files/case/strict_table.h"
#include "scenes/files/case/work.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::files {

namespace {

// The strip lies on the die up to where its edge rounds; there the bend begins.
Hold wiping_hold(const Case& c, const Blank& blank, const Step& step) {
    const int b = step.bends.front();
    const FlatsBeside flats = flats_beside(c, step, b);
    const double edge = std::get<WipingDie>(c.tools[step.die].shape).block.right_radius;
    const double half_arc = half_core(edge, c.thickness, std::abs(c.part.bends[b].angle)) - c.thickness;
    const tool::Block& clamp = std::get<Clamp>(c.tools[*step.clamp].shape).block;
    const auto* punch = shape_of<WipingPunch>(c.tools[step.punch]);
    Hold hold;
    hold.reach_left = half_arc + std::min(flats.left, clamp.width + c.thickness);
    hold.reach_right = blank.half_arc[b] + flats.right + c.thickness;
    hold.level_at = blank.bend_line[b] - blank_to_the_right(step) * half_arc;
    hold.half_span = flats.left;
    hold.at_x = -edge + step.shift;
    // until the punch's corner has passed the flange's end
    hold.depth = flats.right + 2.0 * half_arc + (punch ? punch->block.left_radius : edge) - c.thickness;
    return hold;
}

double wiping_stands_at(const Case& c, const Step& step, const Tool& tool) {
    const auto* die = shape_of<WipingDie>(c.tools[step.die]);
    if (shape_of<WipingDie>(tool)) return -0.5 * die->block.width;
    if (const auto* punch = shape_of<WipingPunch>(tool)) return punch->clearance + 0.5 * punch->block.width;
    if (const auto* clamp = shape_of<Clamp>(tool))
        return (die ? -die->block.right_radius : 0.0) - 0.5 * clamp->block.width;
    return 0.0;
}

void wiping_set_path(const Case& c, const Blank&, const Step& step, plan::StrokePath& path) {
    const WipingPunch& punch = std::get<WipingPunch>(c.tools[step.punch].shape);
    path.kind = plan::StrokeKind::wiping;
    path.nose = punch.block.left_radius;
    path.shoulder = std::get<WipingDie>(c.tools[step.die].shape).block.right_radius;
    path.clearance = punch.clearance;
}

std::string too_near(double clearance) {
    return words("its clearance of %.6g mm is less than the strip's thickness", clearance);
}

void wiping_check_step(const StrictTable& table, const Step& step, const Case& job) {
    const auto* punch = shape_of<WipingPunch>(job.tools[step.punch]);
    if (punch && punch->clearance < job.thickness)
        table.complain("punch", too_near(punch->clearance),
                       "give at least clearance_mm = " + worked_out(job.thickness));
}

Shortfall wiping_misfit(const Case& c, const Blank&, const Step& step) {
    const WipingPunch& punch = std::get<WipingPunch>(c.tools[step.punch].shape);
    if (punch.clearance < c.thickness)
        return {too_near(punch.clearance), 1.0 - punch.clearance / c.thickness};
    const bool past = std::abs(c.part.bends[step.bends.front()].angle) > 92.0 * degree;
    return past ? Shortfall{"wiping cannot bend past 90 degrees"} : Shortfall{};
}

}  // namespace

WorkKind wiping_work() {
    WorkKind work;
    work.work = Work::wiping;
    work.stroke = "wiping";
    work.agreed = 0.1 * degree;
    work.bends = 1;
    work.sense = -1.0;
    work.needs_clamp = true;
    work.check_step = wiping_check_step;
    work.hold = wiping_hold;
    work.set_path = wiping_set_path;
    work.misfit = wiping_misfit;
    work.stands_at = wiping_stands_at;
    return work;
}

}  // namespace overbend::files
