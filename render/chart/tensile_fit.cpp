#include "render/chart/tensile_fit.h"

#include <algorithm>
#include <cmath>

#include "render/picture/marks.h"
#include "render/picture/text_width.h"
#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::chart {

using namespace picture;

namespace {

void check(const TensileFit& chart) {
    if (chart.records.empty() || chart.records.front().size() < 2)
        throw OutOfRange("records of a tensile chart", std::to_string(chart.records.size()),
                         "give at least one, of two points");
    if (chart.laws.empty() || chart.laws.size() > 5)
        throw OutOfRange("laws of a tensile chart", std::to_string(chart.laws.size()), "give 1 to 5");
}

// Strains in per cent.
std::vector<Point> per_cent(std::vector<Point> points) {
    for (Point& p : points) p.x() *= 100.0;
    return points;
}

CurveLook plain(const ChartLook& look) {
    CurveLook line = curve_look(look, 0);
    line.colour = theme_colours(look.theme).ink;
    line.dash.clear();
    return line;
}

void add_record(DrawingList& list, const Rect& box, const TensileFit& chart, const ChartLook& look) {
    ChartInfo info;
    info.title = chart.records.size() > 1 ? "Records" : "Record";
    info.across_words = "engineering strain, %";
    info.up_words = "engineering stress, MPa";
    info.across = info.up = {0.0, 0.0};
    for (const auto& record : chart.records)
        for (const Point& p : record) info.across.take_in(100.0 * p.x()), info.up.take_in(1.08 * p.y());
    ChartFrame frame = add_frame(list, box, info, look);
    for (const auto& record : chart.records) add_curve(list, frame, per_cent(record), plain(look));
    for (const TensileMark& m : chart.marks) {
        const Point at(100.0 * m.at.x(), m.at.y());
        add_dot(list, frame, at, theme_colours(look.theme).ink, DotLook::ring);
        add_label(list, frame, at, m.words, theme_colours(look.theme).ink);
    }
}

void add_residuals(DrawingList& list, const Rect& box, const TensileFit& chart, const ChartLook& look) {
    ChartInfo info;
    info.title = "Record less law";
    info.across_words = "plastic strain, %";
    info.up_words = "stress, MPa";
    info.across = info.up = {0.0, 0.0};
    // A law that does not follow at all would press the others flat.
    std::vector<double> sizes;
    for (const TensileLaw& law : chart.laws) {
        double most = 0.0;
        for (const Point& p : law.residual) most = std::max(most, std::abs(p.y()));
        if (!law.residual.empty()) sizes.push_back(most);
        for (const Point& p : law.residual) info.across.take_in(100.0 * p.x());
    }
    std::sort(sizes.begin(), sizes.end());
    const double most =
        sizes.empty() ? 1.0 : std::min(sizes.back(), 4.0 * std::max(sizes[sizes.size() / 2], 1e-3));
    info.up.take_in(most), info.up.take_in(-most);
    ChartFrame frame = add_frame(list, box, info, look);
    add_levels(list, frame, {0.0});
    for (std::size_t i = 0; i < chart.laws.size(); ++i)
        add_curve(list, frame, per_cent(chart.laws[i].residual), curve_look(look, static_cast<int>(i)));
}

void add_laws(DrawingList& list, const Rect& box, const TensileFit& chart, const ChartLook& look) {
    ChartInfo info;
    info.title = "Laws in the record and beyond";
    info.across_words = "plastic strain, %";
    info.up_words = "true stress, MPa";
    info.across = info.up = {0.0, 0.0};
    info.remarks = chart.remarks;
    double highest = 0.0;
    for (const Point& p : chart.true_curve) highest = std::max(highest, p.y());
    for (std::size_t i = 0; i < chart.laws.size(); ++i) {
        info.key.push_back({chart.laws[i].name, curve_look(look, static_cast<int>(i))});
        for (const Point& p : chart.laws[i].curve)
            info.across.take_in(100.0 * p.x()), info.up.take_in(std::min(p.y(), 2.5 * highest));
    }
    info.key.push_back({"record", plain(look)});
    ChartFrame frame = add_frame(list, box, info, look);
    for (std::size_t i = 0; i < chart.laws.size(); ++i)
        add_curve(list, frame, per_cent(chart.laws[i].curve), curve_look(look, static_cast<int>(i)));
    add_curve(list, frame, per_cent(chart.true_curve), plain(look));
    CurveLook line = curve_look(look, 4);
    line.colour = theme_colours(look.theme).muted;
    const auto add_place = [&](double p, const std::string& words, double height) {
        const double at = 100.0 * p;
        if (at <= frame.across.low || at >= frame.across.high) return;
        add_curve(list, frame, {{at, frame.up.low}, {at, frame.up.high}}, line);
        add_label(list, frame, {at, frame.up.low + height * (frame.up.high - frame.up.low)}, words,
                  theme_colours(look.theme).ink);
    };
    add_place(chart.record_end, "the record ends", 0.12);
    if (chart.bend_strain) add_place(*chart.bend_strain, "surface of the sample bend", 0.05);
}

}  // namespace

DrawingList draw_tensile_fit(const TensileFit& chart, const ChartSize& size, Theme theme) {
    check(chart);
    ChartLook look = chart_look(size, theme);
    look.unit *= 0.62;  // three plots share the page
    DrawingList list = chart_page(size, chart.title, theme);
    const Rect all = chart_box(size);
    const double gap = 2.0 * look.unit;
    double head = 0.0;
    if (!chart.title.empty()) {
        head = 2.2 * look.unit;
        add_text(list, fitted(chart.title, 1.3 * look.unit, all.width), {all.x, all.y + 1.3 * look.unit},
                 1.3 * look.unit, theme_colours(theme).ink);
    }
    const Rect below{all.x, all.y + head, all.width, all.height - head};
    const double left = 0.5 * (all.width - gap), top = 0.56 * (below.height - gap);
    add_record(list, {below.x, below.y, left, top}, chart, look);
    add_residuals(list, {below.x, below.y + top + gap, left, below.height - top - gap}, chart, look);
    add_laws(list, {below.x + left + gap, below.y, left, below.height}, chart, look);
    return list;
}

}  // namespace overbend::chart
