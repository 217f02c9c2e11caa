#include "render/chart/grid_curves.h"

#include "sim/errors.h"

namespace overbend::chart {

using namespace picture;

DrawingList draw_grid_curves(const GridCurves& chart, const ChartSize& size, Theme theme) {
    if (chart.curves.empty() || chart.curves.size() > 10)
        throw OutOfRange("curves over a grid", std::to_string(chart.curves.size()), "give 1 to 10");
    const ChartLook look = chart_look(size, theme);
    ChartInfo info;
    info.title = chart.title, info.across_words = chart.across_words, info.up_words = chart.up_words;
    info.across = info.up = nothing_yet();
    for (std::size_t i = 0; i < chart.curves.size(); ++i) {
        if (!chart.curves[i].name.empty())
            info.key.push_back({chart.curves[i].name, curve_look(look, static_cast<int>(i))});
        for (const Point& p : chart.curves[i].points) info.across.take_in(p.x()), info.up.take_in(p.y());
    }
    DrawingList list = chart_page(size, chart.title, theme);
    ChartFrame frame = add_frame(list, chart_box(size), info, look);
    for (std::size_t i = 0; i < chart.curves.size(); ++i) {
        const CurveLook curve = curve_look(look, static_cast<int>(i));
        add_curve(list, frame, chart.curves[i].points, curve);
        for (const Point& p : chart.curves[i].points)
            add_dot(list, frame, p, curve.colour, i < 5 ? DotLook::full : DotLook::ring);
    }
    return list;
}

}  // namespace overbend::chart
