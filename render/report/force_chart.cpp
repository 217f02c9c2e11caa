#include "render/report/force_chart.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "render/report/html.h"
#include "sim/words.h"

namespace overbend::render {

namespace {

constexpr double width = 400.0, height = 250.0, left = 52.0, right = 386.0, top = 30.0, bottom = 206.0;

struct Axes {
    double from = 0.0, to = 0.0, travel_step = 1.0;  // mm
    double most = 0.0, force_step = 1.0;             // N
    double per_mm() const { return (right - left) / (to - from); }
    double per_n() const { return (bottom - top) / most; }
    double x(double travel) const { return left + (travel - from) * per_mm(); }
    double y(double force) const { return bottom - force * per_n(); }
};

constexpr double farthest_drawn = 2.5;  // of a limit, times the peak

double peak_of(const ForceCurve& curve) {
    double peak = 1e-3;
    for (const ForceAtTravel& p : curve.points) peak = std::max(peak, p.force);
    return peak;
}

bool is_drawn(const ForceLimit& limit, double peak) {
    return 1000.0 * limit.force <= farthest_drawn * peak;
}

Axes axes_of(const ForceCurve& curve) {
    Axes a;
    const double peak = peak_of(curve);
    double low = 0.0, high = 1e-3, force = peak;
    for (const ForceAtTravel& p : curve.points)
        low = std::min(low, p.travel), high = std::max(high, p.travel);
    for (const ForceLimit& l : curve.limits)
        if (is_drawn(l, peak)) force = std::max(force, 1000.0 * l.force);
    a.travel_step = readable_step(high - low, 6);
    a.from = a.travel_step * std::floor(low / a.travel_step + 1e-9);
    a.to = a.travel_step * std::ceil(high / a.travel_step - 1e-9);
    a.force_step = readable_step(1.02 * force, 5);
    a.most = a.force_step * std::ceil(1.02 * force / a.force_step);
    return a;
}

// As many decimals as the step has.
std::string figure(double value, double step) {
    const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
    const double parts = step * std::pow(10.0, decimals);
    const bool half = std::abs(parts - std::round(parts)) > 1e-6;
    return words("%.*f", decimals + (half ? 1 : 0), value + 0.0);
}

std::string grid_and_figures(const Axes& a) {
    std::string lines, text;
    for (int i = 0; a.from + i * a.travel_step <= a.to * (1.0 + 1e-9); ++i) {
        const double travel = a.from + i * a.travel_step;
        lines += words("M%.1f %.1fV%.1f", a.x(travel), top, bottom);
        text += words("<text class=\"tick\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\">%s</text>",
                      a.x(travel), bottom + 17.0, figure(travel, a.travel_step).c_str());
    }
    for (int i = 0; i * a.force_step <= a.most * (1.0 + 1e-9); ++i) {
        const double force = i * a.force_step;
        lines += words("M%.1f %.1fH%.1f", left, a.y(force), right);
        text += words("<text class=\"tick\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"end\">%s</text>", left - 7.0,
                      a.y(force) + 4.5, figure(force / 1000.0, a.force_step / 1000.0).c_str());
    }
    return "<path class=\"grid\" d=\"" + lines + "\"/>" +
           words("<path class=\"axis\" d=\"M%.1f %.1fV%.1fH%.1f\"/>", left, top, bottom, right) + text +
           words("<text x=\"%.1f\" y=\"19\">Force, kN</text>", 8.0) +
           words("<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"end\">Travel, mm</text>", right, height - 9.0);
}

std::string line(const Axes& a, const ForceCurve& curve, std::size_t first, std::size_t last,
                 const char* kind) {
    std::string d;
    for (std::size_t i = first; i <= last; ++i)
        d += words("%s%.1f %.1f", i == first ? "M" : "L", a.x(curve.points[i].travel),
                   a.y(std::max(0.0, curve.points[i].force)));
    return words("<path class=\"%s\" d=\"", kind) + d + "\"/>";
}

// A line across, its words above it.
std::string limit_lines(const Axes& a, const ForceCurve& curve) {
    std::string svg;
    const double peak = peak_of(curve);
    for (const ForceLimit& l : curve.limits) {
        if (!is_drawn(l, peak)) continue;
        const double y = a.y(1000.0 * l.force);
        svg += words("<path class=\"limit\" d=\"M%.1f %.1fH%.1f\"/><text x=\"%.1f\" y=\"%.1f\">", left, y,
                     right, left + 6.0, y > top + 14.0 ? y - 5.0 : y + 15.0) +
               escaped(l.words + words(": %.4g kN", l.force)) + "</text>";
    }
    return svg;
}

}  // namespace

std::vector<std::string> limits_above(const ForceCurve& curve) {
    std::vector<std::string> sentences;
    const double peak = peak_of(curve);
    for (const ForceLimit& l : curve.limits)
        if (!is_drawn(l, peak))
            sentences.push_back(l.words + words(": %.4g kN, %.3g times the peak, above this chart.", l.force,
                                                1000.0 * l.force / peak));
    return sentences;
}

double readable_step(double most, int steps) {
    const double least = most / steps;
    const double power = std::pow(10.0, std::floor(std::log10(least)));
    for (const double factor : {1.0, 2.0, 2.5, 5.0})
        if (factor * power >= least * (1.0 - 1e-9)) return factor * power;
    return 10.0 * power;
}

std::string force_chart(const ForceCurve& curve) {
    if (curve.points.size() < 2)
        throw std::invalid_argument("a force-travel curve needs two points at least");
    const Axes a = axes_of(curve);
    const std::size_t last = curve.points.size() - 1, turn = std::min(curve.turn, last);
    std::string svg = words(
                          "<svg viewBox=\"0 0 %.0f %.0f\" role=\"img\" data-left=\"%.1f\" data-from=\"%.6g\" "
                          "data-per-mm=\"%.6g\" data-bottom=\"%.1f\" data-per-n=\"%.6g\" aria-label=\"",
                          width, height, left, a.from, a.per_mm(), bottom, a.per_n()) +
                      escaped(curve.label) + "\">" + grid_and_figures(a) + limit_lines(a, curve);
    svg += line(a, curve, 0, turn, "down");
    if (turn < last) svg += line(a, curve, turn, last, "back");
    return svg + "</svg>";
}

}  // namespace overbend::render
