#include "render/chart/cost_over_batch.h"

#include <algorithm>
#include <cmath>

#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::chart {

using namespace picture;

namespace {

// Cost at a batch within the curve, straight between its points on logarithmic axes; as a logarithm.
double log_cost(const CostCurve& curve, double log_batch) {
    const std::vector<CostPoint>& p = curve.points;
    std::size_t i = 1;
    while (i + 1 < p.size() && std::log(p[i].batch) < log_batch) ++i;
    const double a = std::log(p[i - 1].batch), b = std::log(p[i].batch);
    const double part = (log_batch - a) / (b - a);
    return (1.0 - part) * std::log(p[i - 1].per_part) + part * std::log(p[i].per_part);
}

// Both curves' batches, as logarithms, where both are known.
std::vector<double> common_batches(const CostCurve& a, const CostCurve& b) {
    std::vector<double> found;
    const double low = std::log(std::max(a.points.front().batch, b.points.front().batch));
    const double high = std::log(std::min(a.points.back().batch, b.points.back().batch));
    if (!(low < high)) return {};
    found = {low, high};
    for (const CostCurve* curve : {&a, &b})
        for (const CostPoint& p : curve->points)
            if (std::log(p.batch) > low && std::log(p.batch) < high) found.push_back(std::log(p.batch));
    std::sort(found.begin(), found.end());
    return found;
}

void check(const CostOverBatch& chart) {
    if (chart.curves.empty() || chart.curves.size() > 5)
        throw OutOfRange("curves of cost over batch", std::to_string(chart.curves.size()), "give 1 to 5");
    for (const CostCurve& curve : chart.curves) {
        if (curve.points.size() < 2)
            throw OutOfRange("points of the cost of '" + curve.name + "'",
                             std::to_string(curve.points.size()), "a curve needs at least two");
        double before = 0.0;
        for (const CostPoint& p : curve.points) {
            if (!(p.batch > before && p.per_part > 0.0 && std::isfinite(p.batch) &&
                  std::isfinite(p.per_part)))
                throw OutOfRange("cost of '" + curve.name + "'",
                                 words("%g at a batch of %g", p.per_part, p.batch),
                                 "batches must rise, and all be above 0");
            before = p.batch;
        }
    }
}

ChartInfo info_of(const CostOverBatch& chart, const ChartLook& look) {
    ChartInfo info;
    info.title = chart.title;
    info.across_words = "batch, parts";
    info.up_words = "cost of a part, " + chart.money;
    info.across = info.up = nothing_yet();
    info.across_scale = info.up_scale = Scale::logarithmic;
    for (std::size_t i = 0; i < chart.curves.size(); ++i) {
        info.key.push_back({chart.curves[i].name, curve_look(look, static_cast<int>(i))});
        for (const CostPoint& p : chart.curves[i].points)
            info.across.take_in(p.batch), info.up.take_in(p.per_part);
    }
    return info;
}

// "press tool cheaper than by hand from 346 parts"
std::string crossing_words(const std::vector<CostCurve>& curves, const CostCrossing& c) {
    return curves[c.after].name + " cheaper than " + curves[c.before].name + " from " +
           tick_number(std::ceil(c.at.batch - 1e-9), 1.0) + " parts";
}

}  // namespace

std::vector<CostCrossing> crossings(const std::vector<CostCurve>& curves) {
    std::vector<CostCrossing> found;
    for (int i = 0; i < static_cast<int>(curves.size()); ++i)
        for (int j = i + 1; j < static_cast<int>(curves.size()); ++j) {
            const std::vector<double> batch = common_batches(curves[i], curves[j]);
            for (std::size_t k = 1; k < batch.size(); ++k) {
                const double before = log_cost(curves[i], batch[k - 1]) - log_cost(curves[j], batch[k - 1]);
                const double after = log_cost(curves[i], batch[k]) - log_cost(curves[j], batch[k]);
                if (before == 0.0 || (before < 0.0) == (after < 0.0)) continue;
                const double at = batch[k - 1] + (batch[k] - batch[k - 1]) * before / (before - after);
                const bool i_first = before < 0.0;
                found.push_back(
                    {i_first ? i : j, i_first ? j : i, {std::exp(at), std::exp(log_cost(curves[i], at))}});
            }
        }
    std::sort(found.begin(), found.end(),
              [](const CostCrossing& a, const CostCrossing& b) { return a.at.batch < b.at.batch; });
    return found;
}

void add_cost_over_batch(DrawingList& list, const Rect& box, const CostOverBatch& chart,
                         const ChartLook& look) {
    check(chart);
    const ThemeColours& colours = theme_colours(look.theme);
    ChartFrame frame = add_frame(list, box, info_of(chart, look), look);
    for (std::size_t i = 0; i < chart.curves.size(); ++i)
        add_curve(list, frame, points_of(chart.curves[i].points, &CostPoint::batch, &CostPoint::per_part),
                  curve_look(look, static_cast<int>(i)));
    for (const CostCrossing& c : crossings(chart.curves)) {
        const Point at(c.at.batch, c.at.per_part);
        add_dot(list, frame, at, colours.ink, DotLook::ring);
        add_label(list, frame, at, crossing_words(chart.curves, c), colours.ink);
    }
}

DrawingList draw_cost_over_batch(const CostOverBatch& chart, const ChartSize& size, Theme theme) {
    DrawingList list = chart_page(size, chart.title, theme);
    add_cost_over_batch(list, chart_box(size), chart, chart_look(size, theme));
    return list;
}

}  // namespace overbend::chart
