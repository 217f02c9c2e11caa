// The punch's force against its travel, thin for the whole stroke and strong as far as it has come.

#include <algorithm>
#include <cmath>

#include "render/picture/stage_parts.h"
#include "render/picture/text_width.h"

namespace overbend::picture {

namespace {

struct Axes {
    Rect plot;
    double travel = 1.0;  // at the right edge, mm
    double force = 1.0;   // at the upper edge, kN
    Point at(double travel_mm, double force_kN) const {
        return {plot.x + plot.width * travel_mm / travel, plot.bottom() - plot.height * force_kN / force};
    }
};

double force_of(const Sheet& sheet, const stroke::State& s) {
    return s.punch_force * sheet.info.strip_width / 1000.0;
}

// The curve up to an instant, from the punch's first touch.
std::vector<Point> curve_until(const Sheet& sheet, const Axes& axes, double instant) {
    std::vector<Point> points;
    const auto add = [&](const stroke::State& s) {
        if (s.travel >= 0.0) points.push_back(axes.at(s.travel, std::max(0.0, force_of(sheet, s))));
    };
    for (size_t i = 0; i < sheet.recording.states.size() && static_cast<double>(i) <= instant; ++i)
        add(sheet.recording.states[i]);
    if (instant > std::floor(instant)) add(sheet.state);
    return points;
}

std::string axis_number(double value) {
    return fixed(value, value >= 10.0 || value == std::floor(value) ? 0 : value >= 0.1 ? 1 : 2);
}

void add_axes(Sheet& sheet, const Axes& axes) {
    const double u = sheet.unit();
    const Rect& plot = axes.plot;
    const Colour& muted = sheet.colours.muted;
    add_fill(sheet.list, rectangle(plot), sheet.colours.stage);
    add_line(sheet.list, polyline({{plot.x, plot.y}, {plot.x, plot.bottom()}, {plot.right(), plot.bottom()}}),
             sheet.colours.muted, sheet.layout.line);
    add_text(sheet.list, "force, kN", {sheet.layout.curve.x, plot.y - 0.7 * u}, u, muted);
    add_text(sheet.list, axis_number(axes.force), {plot.x - 0.35 * u, plot.y + 0.75 * u}, u, muted,
             Across::right);
    add_text(sheet.list, "0", {plot.x - 0.35 * u, plot.bottom()}, u, muted, Across::right);
    add_text(sheet.list, axis_number(axes.travel), {plot.right(), plot.bottom() + 1.25 * u}, u, muted,
             Across::right);
    add_text(sheet.list, "travel, mm", {plot.x + 0.45 * plot.width, plot.bottom() + 1.25 * u}, u, muted,
             Across::middle);
}

}  // namespace

void add_curve(Sheet& sheet) {
    const double u = sheet.unit();
    const Rect& box = sheet.layout.curve;
    if (sheet.info.motion) return;                            // between two strokes there is none
    if (box.width < 9.0 * u || box.height < 6.0 * u) return;  // no room for it
    Axes axes;
    double travel = 0.0;
    double force = 0.0;
    for (const stroke::State& s : sheet.recording.states) {
        travel = std::max(travel, s.travel);
        force = std::max(force, force_of(sheet, s));
    }
    axes.travel = rounded_up(travel);
    axes.force = rounded_up(force);
    const double left = text_width(axis_number(axes.force), u) + 0.5 * u;
    axes.plot = {box.x + left, box.y + 1.9 * u, box.width - left, box.height - 3.6 * u};
    add_axes(sheet, axes);

    const double last = static_cast<double>(sheet.recording.states.size()) - 1.0;
    const std::vector<Point> whole = curve_until(sheet, axes, last);
    const std::vector<Point> so_far = curve_until(sheet, axes, sheet.instant);
    if (whole.size() > 1) add_line(sheet.list, polyline(whole), sheet.colours.rule, 1.5 * sheet.layout.line);
    if (so_far.size() > 1) add_line(sheet.list, polyline(so_far), sheet.colours.loaded, 0.16 * u);
    if (!so_far.empty() && !sheet.info.punch_travel)
        add_fill(sheet.list, circle(so_far.back(), 0.36 * u), sheet.colours.ink);
}

}  // namespace overbend::picture
