#include "scenes/job/plan/tool_overbend.h"

#include <algorithm>
#include <cmath>

#include "scenes/job/plan/tool_size.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

constexpr double on_top = 0.5 * degree;
constexpr double most_relief = 15.0 * degree;   // more leaves too little of a foot
constexpr double least_groove = 20.0 * degree;  // sharper punches break; common practice, no source

double whole_degrees_up(double angle) {
    return std::ceil(angle / degree - 1e-9) * degree;
}

std::string told(const files::Tool& t, const char* what, double angle) {
    return words("'%s' now has %s of %.1f degrees, for the overbend", t.name.c_str(), what, angle / degree);
}

std::string change_groove(files::Tool& die, files::Tool& punch, int face, double more, bool punch_too) {
    auto* vee = std::get_if<tool::VeeDie>(&die.shape);
    auto* wedge = std::get_if<tool::VeePunch>(&punch.shape);
    if (!vee || !wedge) return "";
    tool::VeeFace& groove = vee->faces[face - 1];
    const double angle = groove.angle - whole_degrees_up(more);
    if (angle < least_groove || (wedge->angle > angle && !punch_too)) return "";
    groove.angle = angle;
    wedge->angle = std::min(wedge->angle, angle);
    return told(die, "a groove", angle);
}

std::string change_offset(files::Tool& die, files::Tool& punch, double more) {
    auto* lower = std::get_if<tool::OffsetDie>(&die.shape);
    auto* upper = std::get_if<tool::OffsetPunch>(&punch.shape);
    if (!lower || !upper) return "";
    const double angle = std::min(lower->angle + whole_degrees_up(more), 90.0 * degree);
    if (angle <= lower->angle) return "";
    lower->angle = upper->angle = angle;
    return told(die, "an angle", angle);
}

std::string change_foot(files::Tool& punch, double more) {
    auto* foot = std::get_if<tool::ChannelPunch>(&punch.shape);
    if (!foot) return "";
    const double relief = foot->side_relief + whole_degrees_up(more);
    if (relief > most_relief) return "";
    foot->shank_width -= 2.0 * foot->foot_height * (std::tan(relief) - std::tan(foot->side_relief));
    foot->side_relief = relief;
    return told(punch, "a side relief", relief);
}

}  // namespace

std::string add_overbend(files::Case& c, const files::Step& step, double missing,
                         const std::vector<int>& own_tools) {
    const auto own = [&](int tool) { return std::count(own_tools.begin(), own_tools.end(), tool) > 0; };
    files::Case with = c;
    files::Tool &punch = with.tools[step.punch], &die = with.tools[step.die];
    const double more = missing + on_top;
    std::string change;
    if (own(step.die)) change = change_groove(die, punch, step.die_face, more, own(step.punch));
    if (change.empty() && own(step.die) && own(step.punch)) change = change_offset(die, punch, more);
    if (change.empty() && own(step.punch)) change = change_foot(punch, more);
    if (change.empty() || !can_be_made(with, step)) return "";
    c.tools = with.tools;
    return change;
}

}  // namespace overbend::job
