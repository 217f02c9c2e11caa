#include "render/chart/histogram.h"

#include <algorithm>
#include <cmath>

#include "render/picture/marks.h"
#include "sim/errors.h"

namespace overbend::chart {

using namespace picture;

std::vector<double> column_edges(const std::vector<double>& values) {
    std::vector<double> sorted = values;
    std::sort(sorted.begin(), sorted.end());
    const double low = sorted.front(), high = sorted.back();
    const double quarter = sorted[sorted.size() / 4], three = sorted[3 * sorted.size() / 4];
    const double width = 2.0 * (three - quarter) / std::cbrt(static_cast<double>(sorted.size()));
    const double wanted = width > 0.0 ? (high - low) / width : 8.0;
    const int columns = static_cast<int>(std::clamp(std::ceil(wanted), 8.0, 60.0));
    // All values alike: one column about them.
    const double spread = high > low ? high - low : std::max(1e-9, 1e-6 * std::abs(low));
    const double begin = high > low ? low : low - 0.5 * spread;
    std::vector<double> edges;
    for (int i = 0; i <= columns; ++i) edges.push_back(begin + spread * i / columns);
    return edges;
}

DrawingList draw_histogram(const Histogram& chart, const ChartSize& size, Theme theme) {
    if (chart.values.size() < 2)
        throw OutOfRange("values of a histogram", std::to_string(chart.values.size()), "give two at least");
    if (!std::all_of(chart.values.begin(), chart.values.end(), [](double v) { return std::isfinite(v); }))
        throw OutOfRange("values of a histogram", "one is not finite", "give finite ones");
    const std::vector<double> edges = column_edges(chart.values);
    std::vector<double> count(edges.size() - 1, 0.0);
    const double width = edges[1] - edges[0];
    for (const double v : chart.values) {
        const auto i = static_cast<std::size_t>(std::max(0.0, (v - edges.front()) / width));
        count[std::min(i, count.size() - 1)] += 100.0 / static_cast<double>(chart.values.size());
    }

    const ChartLook look = chart_look(size, theme);
    const ThemeColours& colours = theme_colours(theme);
    const CurveLook columns = curve_look(look, 0), limits = curve_look(look, 1), middle = curve_look(look, 2);
    ChartInfo info;
    info.title = chart.title;
    info.across_words = chart.words;
    info.up_words = "share of the samples, %";
    info.across = nothing_yet();
    info.across.take_in(edges.front()), info.across.take_in(edges.back());
    info.up = {0.0, 0.0};
    for (const double share : count) info.up.take_in(share);
    info.remarks = chart.remarks;
    if (chart.drawn && chart.allowed) {
        info.key = {{"samples", columns}, {"tolerance", limits}, {"drawing", middle}};
        info.across.take_in(*chart.drawn - *chart.allowed),
            info.across.take_in(*chart.drawn + *chart.allowed);
    }
    DrawingList list = chart_page(size, chart.title, theme);
    ChartFrame frame = add_frame(list, chart_box(size), info, look);
    for (std::size_t i = 0; i < count.size(); ++i) {
        const Point foot = frame.at({edges[i], 0.0}), top = frame.at({edges[i + 1], count[i]});
        add_shape(list, rectangle({foot.x(), top.y(), top.x() - foot.x(), foot.y() - top.y()}),
                  mixed(colours.stage, columns.colour, 0.45), columns.colour, 0.06 * look.unit);
    }
    const auto upright = [&](double value, const CurveLook& line) {
        add_curve(list, frame, {{value, frame.up.low}, {value, frame.up.high}}, line);
    };
    if (chart.drawn && chart.allowed) {
        upright(*chart.drawn - *chart.allowed, limits), upright(*chart.drawn + *chart.allowed, limits);
        upright(*chart.drawn, middle);
    }
    return list;
}

}  // namespace overbend::chart
