// A hem: what was bent sharply before is laid flat between two flat faces.

#include <cmath>

#include "scenes/files/case/strict_table.h"
#include "scenes/files/case/work.h"
#include "sim/units.h"

namespace overbend::files {

namespace {

// The flange lies on the die, the hem stands above it; the hem's middle is under the punch's.
Hold hem_hold(const Case& c, const Blank& blank, const Step& step) {
    const int b = step.bends.front();
    const FlatsBeside flats = flats_beside(c, step, b);
    Hold hold;
    // and a little more, or the strip's end would lie outside the zone
    hold.reach_left = blank.half_arc[b] + flats.left + c.thickness;
    hold.reach_right = blank.half_arc[b] + flats.right + c.thickness;
    hold.level_at = blank.bend_line[b] + blank_to_the_right(step) * (blank.half_arc[b] + 0.5 * flats.right);
    hold.half_span = 0.4 * flats.right;
    hold.at_x = 0.5 * (flats.right - flats.left) + step.shift;
    hold.depth = -1.6 * c.thickness;  // both layers are squeezed
    return hold;
}

void hem_check_step(const StrictTable& table, const Step& step, const Case& job) {
    const Bend& bend = job.part.bends[step.bends.front()];
    if (!is_hem(bend))
        table.complain(
            "bends",
            "flat tools close a hem, but " + in_quotes(bend.name) + " is drawn with less than 180 degrees",
            "draw it with bend_deg = 180 or -180, or name other tools");
}

}  // namespace

bool is_hem(const Bend& bend) {
    constexpr double hem_angle = 3.14159;  // rad
    return std::abs(bend.angle) > hem_angle;
}

WorkKind hem_work() {
    WorkKind work;
    work.work = Work::hem;
    work.stroke = "a hem";
    work.agreed = 0.1 * degree;
    work.bends = 1;
    work.lays_hem = true;
    work.check_step = hem_check_step;
    work.hold = hem_hold;
    return work;
}

}  // namespace overbend::files
