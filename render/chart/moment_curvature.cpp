#include "render/chart/moment_curvature.h"

#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::chart {

namespace {

void check(const MomentCurvature& chart) {
    if (chart.bends.empty()) throw OutOfRange("bends of a moment over curvature", "0", "give at least one");
    for (const MomentCurve& bend : chart.bends)
        if (bend.loading.size() < 2)
            throw OutOfRange("points of the moment at '" + bend.name + "'",
                             std::to_string(bend.loading.size()), "a curve needs at least two");
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
        for (const std::vector<SectionPoint>* part : {&bend.loading, &bend.unloading})
            for (const SectionPoint& p : *part) info.across.take_in(p.curvature), info.up.take_in(p.moment);
    const bool named = chart.bends.size() > 1;
    for (std::size_t i = 0; i < chart.bends.size(); ++i) {
        const std::string of = named ? chart.bends[i].name + ": " : "";
        info.key.push_back({of + "pressing", curve_look(look, static_cast<int>(2 * i))});
        info.key.push_back({of + "released", curve_look(look, static_cast<int>(2 * i + 1))});
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
    for (int i = 0; i < static_cast<int>(recording.states.size()); ++i) {
        const SectionPoint p = section_point(recording, recording.states[i], section);
        if (i <= section.loaded) curve.loading.push_back(p);
        if (i >= section.loaded) curve.unloading.push_back(p);
    }
    return curve;
}

MomentCurvature moment_curvature(const picture::ShownStroke& stroke) {
    MomentCurvature chart;
    chart.title = words("Stroke %d, %s: moment over curvature", stroke.number, stroke.name.c_str());
    for (const picture::BendMark& bend : stroke.bends)
        chart.bends.push_back(moment_curve(*stroke.recording, bend.name, bend.from(), bend.to()));
    return chart;
}

void add_moment_curvature(picture::DrawingList& list, const picture::Rect& box, const MomentCurvature& chart,
                          const ChartLook& look) {
    check(chart);
    const picture::ThemeColours& colours = picture::theme_colours(look.theme);
    ChartFrame frame = add_frame(list, box, info_of(chart, look), look);
    for (std::size_t i = 0; i < chart.bends.size(); ++i) {
        add_curve(list, frame,
                  points_of(chart.bends[i].loading, &SectionPoint::curvature, &SectionPoint::moment),
                  curve_look(look, static_cast<int>(2 * i)));
        add_curve(list, frame,
                  points_of(chart.bends[i].unloading, &SectionPoint::curvature, &SectionPoint::moment),
                  curve_look(look, static_cast<int>(2 * i + 1)));
    }
    for (std::size_t i = 0; i < chart.bends.size(); ++i) {
        const MomentCurve& bend = chart.bends[i];
        const SectionPoint& stop = bend.loading.back();
        const std::string of = chart.bends.size() > 1 ? bend.name + " " : "";
        add_dot(list, frame, {stop.curvature, stop.moment}, curve_look(look, static_cast<int>(2 * i)).colour,
                DotLook::ring);
        add_label(list, frame, {stop.curvature, stop.moment}, of + words("loaded %.3g /mm", stop.curvature),
                  colours.ink);
        if (bend.unloading.size() > 1) {
            const SectionPoint& end = bend.unloading.back();
            add_dot(list, frame, {end.curvature, end.moment},
                    curve_look(look, static_cast<int>(2 * i + 1)).colour, DotLook::ring);
            add_label(list, frame, {end.curvature, end.moment}, of + words("free %.3g /mm", end.curvature),
                      colours.ink);
        }
    }
}

picture::DrawingList draw_moment_curvature(const MomentCurvature& chart, const ChartSize& size,
                                           picture::Theme theme) {
    picture::DrawingList list = chart_page(size, chart.title, theme);
    add_moment_curvature(list, chart_box(size), chart, chart_look(size, theme));
    return list;
}

}  // namespace overbend::chart
