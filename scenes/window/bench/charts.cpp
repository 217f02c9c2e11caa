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
            chart::add_curve(list, f, points_of(sections[i].path.loading), curve);
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
            const chart::ForceTravel force =
                chart::force_travel(strips[i].recording, bench_width, instant_at(strips[i], info.released));
            std::vector<Point> back;
            if (info.released > 0.0)
                for (const chart::ForcePoint& p : force.going_back)
                    if (p.travel >= force.now->travel) back.emplace_back(p.travel, p.force);
            chart::add_curve(
                list, f,
                chart::points_of(force.loading, &chart::ForcePoint::travel, &chart::ForcePoint::force),
                curve);
            chart::add_curve(list, f, back, thin(curve));
            if (force.now) chart::add_dot(list, f, {force.now->travel, force.now->force}, curve.colour);
        }
    }
};

}  // namespace

void add_bench_charts(DrawingList& list, const std::vector<BentStrip>& strips, const BoardPlan& plan,
                      const BoardInfo& info) {
    Sheets sheets{list, strips, plan, info, {info.theme, 0.86 * plan.size.letter}, {}};
    for (const BentStrip& s : strips)
        sheets.sections.push_back(
            chart::section_now(s.recording, instant_at(s, info.released), s.section_at));
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
