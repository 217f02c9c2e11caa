#include "render/report/force_chart.h"

#include <algorithm>
#include <stdexcept>

#include "render/chart/axes.h"
#include "render/report/html.h"
#include "sim/words.h"

namespace overbend::report {

namespace {

constexpr double width = 400.0, height = 250.0, left = 52.0, right = 386.0, top = 30.0, bottom = 206.0;

struct Axes {
    chart::Axis travel, force;  // mm, kN
    double per_mm() const { return (right - left) / (travel.high - travel.low); }
    double per_n() const { return (bottom - top) / (1000.0 * force.high); }
    double x(double mm) const { return left + travel.part(mm) * (right - left); }
    double y(double kn) const { return bottom - force.part(kn) * (bottom - top); }
};

Axes axes_of(const chart::ForceTravel& chart) {
    const double peak = chart::peak_of(chart).force;
    chart::Extent travel{0.0, 1e-3}, force{0.0, 1.02 * peak};
    for (const std::vector<chart::ForcePoint>* points : {&chart.loading, &chart.going_back})
        for (const chart::ForcePoint& p : *points) travel.take_in(p.travel);
    for (const chart::ForceLimit& l : chart.limits)
        if (chart::is_drawn(l, peak)) force.take_in(1.02 * l.force);
    return {chart::make_axis("Travel, mm", travel, 8), chart::make_axis("Force, kN", force, 7)};
}

std::string grid_and_figures(const Axes& a) {
    std::string lines, text;
    for (std::size_t i = 0; i < a.travel.ticks.size(); ++i) {
        const double x = a.x(a.travel.ticks[i]);
        lines += words("M%.1f %.1fV%.1f", x, top, bottom);
        text += words("<text class=\"tick\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\">%s</text>", x,
                      bottom + 17.0, a.travel.numbers[i].c_str());
    }
    for (std::size_t i = 0; i < a.force.ticks.size(); ++i) {
        const double y = a.y(a.force.ticks[i]);
        lines += words("M%.1f %.1fH%.1f", left, y, right);
        text += words("<text class=\"tick\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"end\">%s</text>", left - 7.0,
                      y + 4.5, a.force.numbers[i].c_str());
    }
    return "<path class=\"grid\" d=\"" + lines + "\"/>" +
           words("<path class=\"axis\" d=\"M%.1f %.1fV%.1fH%.1f\"/>", left, top, bottom, right) + text +
           words("<text x=\"%.1f\" y=\"19\">%s</text>", 8.0, a.force.words.c_str()) +
           words("<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"end\">%s</text>", right, height - 9.0,
                 a.travel.words.c_str());
}

std::string line(const Axes& a, const std::vector<chart::ForcePoint>& points, const char* kind) {
    std::string d;
    for (const chart::ForcePoint& p : points)
        d += words("%s%.1f %.1f", d.empty() ? "M" : "L", a.x(p.travel), a.y(std::max(0.0, p.force)));
    return words("<path class=\"%s\" d=\"", kind) + d + "\"/>";
}

// A line across, its words above it.
std::string limit_lines(const Axes& a, const chart::ForceTravel& chart) {
    std::string svg;
    const double peak = chart::peak_of(chart).force;
    for (const chart::ForceLimit& l : chart.limits) {
        if (!chart::is_drawn(l, peak)) continue;
        const double y = a.y(l.force);
        svg += words("<path class=\"limit\" d=\"M%.1f %.1fH%.1f\"/><text x=\"%.1f\" y=\"%.1f\">", left, y,
                     right, left + 6.0, y > top + 14.0 ? y - 5.0 : y + 15.0) +
               escaped(chart::limit_words(l)) + "</text>";
    }
    return svg;
}

}  // namespace

std::string force_chart(const chart::ForceTravel& chart) {
    if (chart.loading.size() < 2)
        throw std::invalid_argument("a force-travel curve needs at least two points");
    const Axes a = axes_of(chart);
    std::string svg = words(
                          "<svg viewBox=\"0 0 %.0f %.0f\" role=\"img\" data-left=\"%.1f\" data-from=\"%.6g\" "
                          "data-per-mm=\"%.6g\" data-bottom=\"%.1f\" data-per-n=\"%.6g\" aria-label=\"",
                          width, height, left, a.travel.low, a.per_mm(), bottom, a.per_n()) +
                      escaped(chart.title) + "\">" + grid_and_figures(a) + limit_lines(a, chart);
    svg += line(a, chart.loading, "down");
    if (chart.going_back.size() > 1) svg += line(a, chart.going_back, "back");
    return svg + "</svg>";
}

}  // namespace overbend::report
