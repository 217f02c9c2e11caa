#include "sim/shop/press_check.h"

#include <algorithm>
#include <cmath>

#include "sim/units.h"

namespace overbend::shop {

namespace {

// Common practice, no source: a press is planned to four fifths of its rating, and a hand's breadth of room.
constexpr double full = 0.8;
constexpr double full_room = 0.95;
constexpr double over_the_part = 10.0;  // mm that the ram rises over what the part needs

Finding check(Rule rule, double figure, double limit, double thin) {
    return {judged(figure, limit, thin), rule, figure, limit};
}

void room(const PressLimits& press, const StrokeDemand& s, std::vector<Finding>& all) {
    all.push_back(check(Rule::ram_stroke, s.part_room, press.stroke, full_room));
    if (!press.daylight) return;
    all.push_back(check(Rule::daylight, s.tools_closed + s.part_room, *press.daylight, full_room));
    // The ram comes down by its stroke and no further.
    Finding shut = check(Rule::shut_height, *press.daylight - press.stroke, s.tools_closed, 1.0);
    if (shut.severity != Severity::within)
        shut.severity = Severity::caution;  // a plate makes up the difference
    all.push_back(shut);
}

void short_tool(const PressLimits& press, const StrokeDemand& s, std::vector<Finding>& all) {
    const auto ask = [&](const char* who, const std::optional<double>& rating) {
        if (!rating) return;
        all.push_back(check(Rule::load_per_metre, s.peak_force, *rating, full));
        all.back().further = {s.strip_width}, all.back().detail = who;
    };
    ask("the punch", s.punch_rating);
    ask("the die", s.die_rating);
    ask(holders_words, press.line_load);
}

void placing(const PressLimits& press, const StrokeDemand& s, std::vector<Finding>& all) {
    if (press.off_centre) {
        const double moment = s.peak_force * s.strip_width * std::abs(s.load_centre) / 1e6;
        all.push_back(check(Rule::off_centre_load, moment, *press.off_centre, full));
        all.back().further = {std::abs(s.load_centre)};
    }
    if (press.throat) all.push_back(check(Rule::throat, s.reach_back, *press.throat, full_room));
    if (s.gauge > 0.0 && press.gauge_reach)
        all.push_back(check(Rule::gauge_out, s.gauge, *press.gauge_reach, 1.0));
    if (s.gauge > 0.0 && press.gauge_nearest)
        all.push_back(check(Rule::gauge_in, *press.gauge_nearest, s.gauge, 1.0));
}

// The state with least force to spare, where it is above the rated angle; below it the rated force is judged.
void crank(const PressLimits& press, const StrokeDemand& s, std::vector<Finding>& all) {
    if (!press.eccentric) return;
    std::optional<Finding> worst;
    for (const ForceAt& at : s.on_the_way) {
        const double force = at.force * s.strip_width / 1000.0;
        const double there = crank_force(press.force, press.stroke, *press.eccentric, at.height);
        if (force <= 0.0 || there >= press.force) continue;
        if (worst && force * worst->limit <= worst->figure * there) continue;
        worst = check(Rule::crank_force, force, there, full);
        worst->further = {at.height, crank_angle(press.stroke, at.height) / degree, press.force,
                          press.eccentric->rated_angle / degree};
    }
    if (worst) all.push_back(*worst);
}

}  // namespace

double crank_angle(double stroke, double height) {
    const double radius = 0.5 * stroke;
    return std::acos(std::clamp(1.0 - height / radius, -1.0, 1.0));
}

double crank_force(double rated, double stroke, const Eccentric& drive, double height) {
    const double now = std::sin(crank_angle(stroke, height));
    const double at_rated = std::sin(drive.rated_angle);
    return now > at_rated ? rated * at_rated / now : rated;
}

Finding force_check(double rated, double peak_force, double strip_width) {
    return check(Rule::press_force, peak_force * strip_width / 1000.0, rated, full);
}

std::vector<Finding> press_checks(const PressLimits& press, const StrokeDemand& stroke) {
    std::vector<Finding> all = {force_check(press.force, stroke.peak_force, stroke.strip_width)};
    room(press, stroke, all);
    short_tool(press, stroke, all);
    placing(press, stroke, all);
    crank(press, stroke, all);
    if (press.energy) all.push_back(check(Rule::press_energy, stroke.work, *press.energy, full));
    return all;
}

double ram_rise(const PressLimits& press, const StrokeDemand& stroke) {
    const double wanted = std::max(stroke.part_room, stroke.stop_travel) + over_the_part;
    return std::min(wanted, press.stroke);
}

double cycle_time(const RamSpeeds& speeds, double rise, double stop_travel) {
    const double slow = std::min(rise, stop_travel + speeds.slow_above);
    return (rise - slow) / speeds.approach + slow / speeds.pressing + speeds.dwell + rise / speeds.going_back;
}

}  // namespace overbend::shop
