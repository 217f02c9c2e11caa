#include "render/chart/moment_curvature.h"

#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::chart {

using namespace picture;

namespace {

void check(const MomentCurvature& chart) {
    if (chart.bends.empty()) throw OutOfRange("bends of a moment over curvature", "0", "give at least one");
    for (const MomentCurve& bend : chart.bends)
        if (bend.path.loading.size() < 2)
            throw OutOfRange("points of the moment at '" + bend.name + "'",
                             std::to_string(bend.path.loading.size()), "a curve needs at least two");
}

// "Greatest curvature under load, at 18.2 mm of the blank; a bend in a die is not under one moment."
std::string section_words(const MomentCurvature& chart) {
    std::string where;
    for (const MomentCurve& bend : chart.bends)
        where += words("%s%.1f mm", where.empty() ? "" : " and ", bend.blank_position);
    return "At the place of greatest curvature under load, " + where +
           " from the blank's left end. The moment falls to both sides of it, towards punch and die.";
}

ChartInfo info_of(const MomentCurvature& chart, const ChartLook& look) {
    ChartInfo info;
    info.title = chart.title;
    info.across_words = "curvature, 1/mm";
    info.up_words = "moment, N mm per mm of width";
    info.across = info.up = {0.0, 0.0};
    for (const MomentCurve& bend : chart.bends)
        for (const std::vector<SectionPoint>* part : {&bend.path.loading, &bend.path.unloading})
            for (const SectionPoint& p : *part) info.across.take_in(p.curvature), info.up.take_in(p.moment);
    const bool named = chart.bends.size() > 1;
    for (int i = 0; i < static_cast<int>(chart.bends.size()); ++i) {
        const std::string of = named ? chart.bends[i].name + ": " : "";
        info.key.push_back({of + "pressing", curve_look(look, 2 * i)});
        info.key.push_back({of + "released", curve_look(look, 2 * i + 1)});
    }
    info.remarks.push_back(section_words(chart));
    return info;
}

}  // namespace

MomentCurve moment_curve(const stroke::Recording& recording, const std::string& name, double from,
                         double to) {
    const BentSection section = find_section(recording, from, to);
    MomentCurve curve;
    curve.name = name;
    curve.blank_position = section.blank_position;
    curve.path = section_path(recording, section, static_cast<double>(recording.states.size()) - 1.0);
    return curve;
}

MomentCurvature moment_curvature(const ShownStroke& stroke) {
    MomentCurvature chart;
    chart.title = words("Stroke %d, %s: moment over curvature", stroke.number, stroke.name.c_str());
    for (const BendMark& bend : stroke.bends)
        chart.bends.push_back(moment_curve(*stroke.recording, bend.name, bend.from(), bend.to()));
    return chart;
}

DrawingList draw_moment_curvature(const MomentCurvature& chart, const ChartSize& size, Theme theme) {
    check(chart);
    const ChartLook look = chart_look(size, theme);
    DrawingList list = chart_page(size, chart.title, theme);
    ChartFrame frame = add_frame(list, chart_box(size), info_of(chart, look), look);
    for (int i = 0; i < static_cast<int>(chart.bends.size()); ++i) {
        add_curve(list, frame, points_of(chart.bends[i].path.loading), curve_look(look, 2 * i));
        add_curve(list, frame, points_of(chart.bends[i].path.unloading), curve_look(look, 2 * i + 1));
    }
    const auto add_end = [&](const SectionPoint& p, int curve, const std::string& words) {
        add_dot(list, frame, {p.curvature, p.moment}, curve_look(look, curve).colour, DotLook::ring);
        add_label(list, frame, {p.curvature, p.moment}, words, theme_colours(theme).ink);
    };
    for (int i = 0; i < static_cast<int>(chart.bends.size()); ++i) {
        const SectionPath& path = chart.bends[i].path;
        const std::string of = chart.bends.size() > 1 ? chart.bends[i].name + " " : "";
        const SectionPoint& stop = path.loading.back();
        add_end(stop, 2 * i, of + words("loaded %.3g /mm", stop.curvature));
        if (path.unloading.size() < 2) continue;
        const SectionPoint& end = path.unloading.back();
        add_end(end, 2 * i + 1, of + words("free %.3g /mm", end.curvature));
    }
    return list;
}

}  // namespace overbend::chart
