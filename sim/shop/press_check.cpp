#include "sim/shop/press_check.h"

#include <algorithm>
#include <cmath>

#include "sim/words.h"

namespace overbend::shop {

namespace {

// Common practice, no source: a press is planned to four fifths of its rating, and a hand's breadth of room.
constexpr double full = 0.8;
constexpr double full_room = 0.95;
constexpr double over_the_part = 10.0;  // mm that the ram rises over what the part needs
const char* const practice = "common practice";

Check check(const char* what, double figure, double limit, const char* unit, double thin, std::string said) {
    return {what, figure, limit, unit, judged(figure, limit, thin), std::move(said), practice};
}

void force(const PressLimits& press, const StrokeDemand& s, std::vector<Check>& all) {
    const double kN = s.peak_force * s.strip_width / 1000.0;
    all.push_back(check(
        "force", kN, press.force, "kN", full,
        words("%.2f kN of the press's %g kN, %.0f per cent", kN, press.force, 100.0 * kN / press.force)));
}

void room(const PressLimits& press, const StrokeDemand& s, std::vector<Check>& all) {
    const double rise = s.part_room;
    all.push_back(
        check("stroke", rise, press.stroke, "mm", full_room,
              words("the ram must rise %.1f mm above its stop to release the strip; its stroke is %g mm",
                    rise, press.stroke)));
    if (!press.daylight) return;
    const double open = s.tools_closed + s.part_room;
    all.push_back(check("daylight", open, *press.daylight, "mm", full_room,
                        words("tools, holders and the part need %.1f mm of the %g mm between bed and ram",
                              open, *press.daylight)));
    // The ram comes down by its stroke and no further.
    const double least = *press.daylight - press.stroke;
    Check shut = check("shut height", least, s.tools_closed, "mm", 1.0,
                       words("the closed tools are %.1f mm high; the ram comes down to %.1f mm above the bed",
                             s.tools_closed, least));
    if (shut.verdict != Verdict::fine) {
        shut.verdict = Verdict::thin;  // a plate makes up the difference
        shut.words += words("; remedy: pack %.1f mm under the die", least - s.tools_closed);
    }
    all.push_back(shut);
}

void short_tool(const PressLimits& press, const StrokeDemand& s, std::vector<Check>& all) {
    const auto ask = [&](const char* who, const std::optional<double>& rating) {
        if (!rating) return;
        all.push_back(check("load per metre", s.peak_force, *rating, "kN/m", full,
                            words("%.0f kN per metre on the strip's %g mm; rated load of %s: %g kN/m",
                                  s.peak_force, s.strip_width, who, *rating)));
    };
    ask("the punch", s.punch_rating);
    ask("the die", s.die_rating);
    ask("the press's holders", press.line_load);
}

void placing(const PressLimits& press, const StrokeDemand& s, std::vector<Check>& all) {
    if (press.off_centre) {
        const double moment = s.peak_force * s.strip_width * std::abs(s.load_centre) / 1e6;
        all.push_back(check("off-centre load", moment, *press.off_centre, "kN m", full,
                            words("the load is %.2f mm from the ram's axis: %.4f kN m of %g kN m",
                                  std::abs(s.load_centre), moment, *press.off_centre)));
    }
    if (press.throat)
        all.push_back(check("throat", s.reach_back, *press.throat, "mm", full_room,
                            words("the strip reaches %.1f mm behind the punch's axis; the frame is at %g mm",
                                  s.reach_back, *press.throat)));
    if (s.gauge > 0.0 && press.gauge_reach)
        all.push_back(
            check("gauge", s.gauge, *press.gauge_reach, "mm", 1.0,
                  words("the gauge is at %.2f mm; its limit is %g mm", s.gauge, *press.gauge_reach)));
    if (s.gauge > 0.0 && press.gauge_nearest)
        all.push_back(check(
            "gauge", *press.gauge_nearest, s.gauge, "mm", 1.0,
            words("the gauge is at %.2f mm; its nearest position is %g mm", s.gauge, *press.gauge_nearest)));
}

}  // namespace

std::vector<Check> press_checks(const PressLimits& press, const StrokeDemand& stroke) {
    std::vector<Check> all;
    force(press, stroke, all);
    room(press, stroke, all);
    short_tool(press, stroke, all);
    placing(press, stroke, all);
    if (press.energy)
        all.push_back(check(
            "energy", stroke.work, *press.energy, "J", full,
            words("%.2f J of the %g J that the press delivers in a stroke", stroke.work, *press.energy)));
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
