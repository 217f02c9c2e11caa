#include "sim/shop/press_check.h"

#include <algorithm>
#include <cmath>

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
    ask("the press's holders", press.line_load);
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

}  // namespace

Finding force_check(double rated, double peak_force, double strip_width) {
    return check(Rule::press_force, peak_force * strip_width / 1000.0, rated, full);
}

std::vector<Finding> press_checks(const PressLimits& press, const StrokeDemand& stroke) {
    std::vector<Finding> all = {force_check(press.force, stroke.peak_force, stroke.strip_width)};
    room(press, stroke, all);
    short_tool(press, stroke, all);
    placing(press, stroke, all);
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
