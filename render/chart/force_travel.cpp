#include "render/chart/force_travel.h"

#include <algorithm>
#include <iterator>

#include "render/picture/stage.h"
#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::chart {

using namespace picture;

namespace {

constexpr double farthest_drawn = 2.5;  // of a limit, times the peak

ChartInfo info_of(const ForceTravel& chart, const ChartLook& look) {
    ChartInfo info;
    info.title = chart.title;
    info.across_words = "travel of the punch, mm";
    info.up_words = "force, kN";
    info.across = info.up = {0.0, 0.0};
    for (const std::vector<ForcePoint>* part : {&chart.loading, &chart.going_back})
        for (const ForcePoint& p : *part) info.across.take_in(p.travel), info.up.take_in(1.03 * p.force);
    info.key = {{"pressing", curve_look(look, 0)}};
    if (!chart.going_back.empty()) info.key.push_back({"ram returning", curve_look(look, 1)});
    for (const ForceLimit& l : chart.limits)
        if (is_drawn(l, peak_of(chart).force)) info.up.take_in(1.05 * l.force);
    info.remarks = limits_above(chart);
    return info;
}

ForcePoint point_of(const stroke::State& s, double strip_width) {
    return {std::max(0.0, s.travel), std::max(0.0, s.punch_force * strip_width / 1000.0)};
}

}  // namespace

bool is_drawn(const ForceLimit& limit, double peak) {
    return limit.force <= farthest_drawn * peak;
}

std::string limit_words(const ForceLimit& limit) {
    return words("%s: %.4g kN", limit.words.c_str(), limit.force);
}

ForcePoint peak_of(const ForceTravel& chart) {
    ForcePoint peak{0.0, 1e-6};
    for (const ForcePoint& p : chart.loading)
        if (p.force > peak.force) peak = p;
    return peak;
}

std::vector<std::string> limits_above(const ForceTravel& chart) {
    std::vector<std::string> sentences;
    const double peak = peak_of(chart).force;
    for (const ForceLimit& l : chart.limits)
        if (!is_drawn(l, peak))
            sentences.push_back(limit_words(l) +
                                words(", %.3g times the peak, above this chart.", l.force / peak));
    return sentences;
}

ForceTravel force_travel(const stroke::Recording& recording, double strip_width) {
    ForceTravel chart;
    for (const stroke::State& s : recording.states) {
        if (s.travel < 0.0) continue;
        if (s.phase <= stroke::Phase::held)
            chart.loading.push_back(point_of(s, strip_width));
        else if (s.phase == stroke::Phase::retracting)
            chart.going_back.push_back(point_of(s, strip_width));
    }
    if (!chart.going_back.empty() && !chart.loading.empty())
        chart.going_back.insert(chart.going_back.begin(), chart.loading.back());
    return chart;
}

ForceTravel force_travel(const stroke::Recording& recording, double strip_width, double instant) {
    ForceTravel chart = force_travel(recording, strip_width);
    chart.now = point_of(state_at(recording, instant), strip_width);
    return chart;
}

ForceTravel force_travel(const ShownJob& job, const ShownStroke& stroke) {
    ForceTravel chart = force_travel(*stroke.recording, job.strip_width);
    chart.title = words("Stroke %d, %s: force over travel", stroke.number, stroke.name.c_str());
    chart.limits = stroke.limits;
    return chart;
}

DrawingList draw_force_travel(const ForceTravel& chart, const ChartSize& size, Theme theme) {
    if (chart.loading.size() < 2)
        throw OutOfRange("points of a force over travel", std::to_string(chart.loading.size()),
                         "a curve needs at least two");
    const ChartLook look = chart_look(size, theme);
    const Colour& ink = theme_colours(theme).ink;
    const ForcePoint peak = peak_of(chart);
    DrawingList list = chart_page(size, chart.title, theme);
    ChartFrame frame = add_frame(list, chart_box(size), info_of(chart, look), look);
    add_curve(list, frame, points_of(chart.going_back, &ForcePoint::travel, &ForcePoint::force),
              curve_look(look, 1));
    add_curve(list, frame, points_of(chart.loading, &ForcePoint::travel, &ForcePoint::force),
              curve_look(look, 0));
    std::vector<ForceLimit> drawn;
    std::copy_if(chart.limits.begin(), chart.limits.end(), std::back_inserter(drawn),
                 [&](const ForceLimit& l) { return is_drawn(l, peak.force); });
    CurveLook line = curve_look(look, 4);
    line.colour = ink;
    for (const ForceLimit& l : drawn)
        add_curve(list, frame, {{frame.across.low, l.force}, {frame.across.high, l.force}}, line);
    for (const ForceLimit& l : drawn)
        add_label(list, frame, {0.5 * (frame.across.low + frame.across.high), l.force}, limit_words(l), ink);
    add_dot(list, frame, {peak.travel, peak.force}, curve_look(look, 0).colour, DotLook::ring);
    add_label(list, frame, {peak.travel, peak.force}, words("peak %.3g kN", peak.force), ink);
    const ForcePoint& stop = chart.loading.back();
    add_label(list, frame, {stop.travel, 0.0}, words("stop %.2f mm", stop.travel), ink);
    if (chart.now) add_dot(list, frame, {chart.now->travel, chart.now->force}, ink);
    return list;
}

}  // namespace overbend::chart
