#include "render/chart/shares.h"

#include <algorithm>

#include "render/picture/marks.h"
#include "render/picture/text_width.h"
#include "sim/errors.h"

namespace overbend::chart {

using namespace picture;

namespace {

constexpr double least_share = -0.1, most_share = 1.1;

// A bar, its interval as a line with ends, in the frame's coordinates.
void add_bar(DrawingList& list, const ChartFrame& frame, double y, double half, double value, double low,
             double high, const Colour& colour) {
    const double u = frame.look.unit;
    const Colour& ground = theme_colours(frame.look.theme).stage;
    const auto across = [&](double share) {
        return frame.at({100.0 * std::clamp(share, least_share, most_share), 0.0}).x();
    };
    const double zero = across(0.0), end = across(value);
    add_shape(list, rectangle({std::min(zero, end), y - half, std::abs(end - zero), 2.0 * half}),
              mixed(ground, colour, 0.5), colour, 0.06 * u);
    add_line(list, {across(low), y}, {across(high), y}, theme_colours(frame.look.theme).ink, 0.1 * u);
    for (const double at : {low, high})
        add_line(list, {across(at), y - 0.6 * half}, {across(at), y + 0.6 * half},
                 theme_colours(frame.look.theme).ink, 0.1 * u);
}

}  // namespace

DrawingList draw_shares(const Shares& chart, const ChartSize& size, Theme theme) {
    if (chart.bars.empty() || chart.bars.size() > 24)
        throw OutOfRange("bars of a chart of shares", std::to_string(chart.bars.size()), "give 1 to 24");
    const ChartLook look = chart_look(size, theme);
    const double u = look.unit;
    const CurveLook alone = curve_look(look, 0), total = curve_look(look, 1);
    DrawingList list = chart_page(size, chart.title, theme);
    ChartInfo info;
    info.title = chart.title;
    info.across_words = "share of the variance, %";
    info.up_words = "";
    info.across = {0.0, 100.0};
    for (const ShareBar& bar : chart.bars)
        for (const double share : {bar.alone_low, bar.alone_high, bar.total_low, bar.total_high})
            info.across.take_in(100.0 * std::clamp(share, least_share, most_share));
    info.up = {0.0, static_cast<double>(chart.bars.size())};
    info.key = {{"alone", alone}, {"with all that it does together with others", total}};
    info.remarks = chart.remarks;

    // Names stand left of the plot, where another chart has its numbers.
    const Rect box = chart_box(size);
    const double most = 0.4 * box.width;
    double widest = 0.0;
    for (const ShareBar& bar : chart.bars) widest = std::max(widest, text_width(bar.name, u));
    widest = std::min(widest, most);
    info.names_wide = widest + 0.8 * u;
    const ChartFrame frame = add_frame(list, box, info, look);
    const double row = frame.plot.height / static_cast<double>(chart.bars.size());
    const double half = std::min(0.17 * row, 0.55 * u);
    for (std::size_t i = 0; i < chart.bars.size(); ++i) {
        const ShareBar& bar = chart.bars[i];
        const double y = frame.plot.y + (static_cast<double>(i) + 0.5) * row;
        add_text_on_middle(list, fitted(bar.name, u, most), {frame.plot.x - 0.5 * u, y}, u,
                           theme_colours(theme).ink, Across::right);
        add_bar(list, frame, y - 1.2 * half, half, bar.alone, bar.alone_low, bar.alone_high, alone.colour);
        add_bar(list, frame, y + 1.2 * half, half, bar.total, bar.total_low, bar.total_high, total.colour);
    }
    return list;
}

}  // namespace overbend::chart
