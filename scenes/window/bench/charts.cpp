// The charts beside the strips: moment over curvature, stress through the thickness, force over travel, a
// curve a strip. Their axes are those of the deepest way.

#include "render/chart/force_travel.h"
#include "render/chart/frame.h"
#include "render/chart/section_now.h"
#include "scenes/window/bench/board.h"

namespace overbend::window {

using chart::ChartFrame;
using chart::ChartInfo;
using picture::DrawingList;
using picture::Point;
using picture::Rect;

namespace {

chart::CurveLook thin(chart::CurveLook look) {
    look.dash = {4.0 * look.width, 3.0 * look.width};
    return look;
}

// Over the way of the punch: a bent strip is touched further down.
std::vector<Point> points(const std::vector<chart::ForcePoint>& curve, double first_touch) {
    std::vector<Point> all;
    for (const chart::ForcePoint& p : curve) all.emplace_back(p.travel + first_touch, p.force);
    return all;
}

struct Sheets {
    DrawingList& list;
    const std::vector<BentStrip>& strips;
    const BoardPlan& plan;
    const BoardInfo& info;
    chart::ChartLook look;
    std::vector<chart::SectionNow> sections;

    ChartFrame frame(const Rect& box, const char* across, const char* up, const chart::Extent& x,
                     const chart::Extent& y) {
        ChartInfo chart;
        chart.across_words = across, chart.up_words = up;
        chart.across = x, chart.up = y;
        return chart::add_frame(list, box, chart, look);
    }

    void moments(const Rect& box) {
        ChartFrame f = frame(box, "curvature, 1/mm", "moment, N mm per mm", plan.curvature, plan.moment);
        for (std::size_t i = 0; i < strips.size(); ++i) {
            const chart::CurveLook curve = chart::curve_look(look, static_cast<int>(i));
            chart::add_curve(list, f, points_of(sections[i].before), thin(curve));
            chart::add_curve(list, f, points_of(sections[i].path.loading), curve);
            // What comes back is told only when it has come.
            if (strips[i].goes_back())
                chart::add_curve(list, f, points_of(sections[i].path.unloading), thin(curve));
            chart::add_dot(list, f, {sections[i].at.curvature, sections[i].at.moment}, curve.colour);
        }
    }

    void stresses(const Rect& box) {
        ChartFrame f = frame(box, "hoop stress, MPa", "height, mm", plan.stress, plan.height);
        for (std::size_t i = 0; i < strips.size(); ++i) {
            const std::vector<Point> values =
                chart::points_of(sections[i].layers, &chart::LayerPoint::stress, &chart::LayerPoint::height);
            chart::add_curve(list, f, values, chart::curve_look(look, static_cast<int>(i)));
        }
    }

    void forces(const Rect& box) {
        ChartFrame f = frame(box, "travel, mm", "force on 20 mm of width, kN", plan.travel, plan.force);
        for (std::size_t i = 0; i < strips.size(); ++i) {
            const chart::CurveLook curve = chart::curve_look(look, static_cast<int>(i));
            const BentStrip& strip = strips[i];
            for (const auto& earlier : strip.earlier) {
                const chart::ForceTravel was = chart::force_travel(earlier->recording, bench_width);
                chart::add_curve(list, f, points(was.loading, earlier->first_touch), thin(curve));
            }
            const chart::ForceTravel force = chart::force_travel(strip.recording, bench_width, strip.instant);
            std::vector<chart::ForcePoint> back;
            if (strip.goes_back())
                for (const chart::ForcePoint& p : force.going_back)
                    if (p.travel >= force.now->travel) back.push_back(p);
            chart::add_curve(list, f, points(force.loading, strip.first_touch), curve);
            chart::add_curve(list, f, points(back, strip.first_touch), thin(curve));
            if (force.now)
                chart::add_dot(list, f, {force.now->travel + strip.first_touch, force.now->force},
                               curve.colour);
        }
    }
};

}  // namespace

void add_bench_charts(DrawingList& list, const std::vector<BentStrip>& strips, const BoardPlan& plan,
                      const BoardInfo& info) {
    Sheets sheets{list, strips, plan, info, {info.theme, 0.86 * plan.size.letter}, {}};
    for (const BentStrip& s : strips) {
        sheets.sections.push_back(chart::section_now(s.recording, s.instant, s.section_at));
        for (const auto& earlier : s.earlier)
            chart::put_before(sheets.sections.back(), earlier->recording, chart::Faces::as_now);
    }
    const int count = plan.kind == BenchKind::vee ? 3 : 2;
    const auto box = [&](int i) {
        const double h = plan.charts.height / count;
        return Rect{plan.charts.x, plan.charts.y + h * i, plan.charts.width, h - 0.5 * plan.size.letter};
    };
    sheets.moments(box(0));
    sheets.stresses(box(1));
    if (count == 3) sheets.forces(box(2));
}

}  // namespace overbend::window
