#include "render/chart/stress_through_thickness.h"

#include <tuple>

#include "render/picture/strip_shape.h"
#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::chart {

using namespace picture;

namespace {

constexpr double seen = 0.01;  // an elastic core thinner than this part of the thickness is not drawn

void check(const StressThroughThickness& chart) {
    if (chart.loaded.size() < 3 || chart.loaded.size() != chart.free.size())
        throw OutOfRange(
            "layers of a section",
            std::to_string(chart.loaded.size()) + " loaded, " + std::to_string(chart.free.size()) + " free",
            "give the same layers for both, at least three");
    if (!(chart.lower < chart.upper))
        throw OutOfRange("surfaces of a section", words("%g and %g mm", chart.lower, chart.upper),
                         "the lower one must lie below the upper one");
}

double thickness(const StressThroughThickness& chart) {
    return chart.upper - chart.lower;
}

bool core_is_seen(const StressThroughThickness& chart) {
    return chart.core && chart.core->high - chart.core->low > seen * thickness(chart);
}

std::string core_words(const StressThroughThickness& chart) {
    if (!chart.core) return "Under load, all layers are plastic.";
    const double core = chart.core->high - chart.core->low;
    if (!core_is_seen(chart))
        return words("Under load, the elastic core is less than %.2f mm thick: too thin to draw.",
                     seen * thickness(chart));
    return words("Under load, the elastic core (shaded) is %.2f mm of %.2f mm thick.", core,
                 thickness(chart));
}

ChartInfo info_of(const StressThroughThickness& chart, const ChartLook& look) {
    ChartInfo info;
    info.title = chart.title;
    info.across_words = "hoop stress, MPa (compression \u2212, tension +)";
    info.up_words = "height above the mid-line, mm";
    info.across = {0.0, 0.0};
    info.up = {chart.lower, chart.upper};
    for (const std::vector<LayerPoint>* layers : {&chart.loaded, &chart.free})
        for (const LayerPoint& l : *layers) info.across.take_in(l.stress), info.up.take_in(l.height);
    info.key = {{"loaded", curve_look(look, 0)}, {"free", curve_look(look, 1)}};
    info.remarks = {core_words(chart),
                    words("At the place of greatest curvature under load, %.1f mm from the blank's left end. "
                          "Stress: hoop minus radial, at the middle of each layer.",
                          chart.blank_position)};
    return info;
}

void add_core(DrawingList& list, const ChartFrame& frame, const ElasticCore& core) {
    const double y = frame.at({0.0, core.high}).y();
    const Rect band{frame.plot.x, y, frame.plot.width, frame.at({0.0, core.low}).y() - y};
    list.items.push_back(
        Shape{rectangle(band), with_opacity(okabe_ito::sky_blue, 0.3), std::nullopt, 1.0, {}, frame.plot});
}

}  // namespace

StressThroughThickness stress_through_thickness(const stroke::Recording& r, double from, double to) {
    const BentSection section = find_section(r, from, to);
    const stroke::State& held = r.states[section.loaded];
    StressThroughThickness chart;
    chart.blank_position = section.blank_position;
    std::tie(chart.lower, chart.upper) = section_surfaces(r, held, section);
    chart.loaded = section_layers(r, held, section);
    chart.free = section_layers(r, r.states.back(), section);
    chart.core = elastic_core(chart.loaded, chart.lower, chart.upper);
    return chart;
}

StressThroughThickness stress_through_thickness(const ShownStroke& stroke, const BendMark& bend) {
    StressThroughThickness chart = stress_through_thickness(*stroke.recording, bend.from(), bend.to());
    chart.title = words("Stroke %d, bend %s: stress through the thickness", stroke.number, bend.name.c_str());
    return chart;
}

DrawingList draw_stress_through_thickness(const StressThroughThickness& chart, const ChartSize& size,
                                          Theme theme) {
    check(chart);
    const ChartLook look = chart_look(size, theme);
    DrawingList list = chart_page(size, chart.title, theme);
    ChartFrame frame = add_frame(list, chart_box(size), info_of(chart, look), look);
    if (core_is_seen(chart)) add_core(list, frame, *chart.core);
    add_levels(list, frame, {chart.lower, chart.upper});
    const CurveLook loaded = curve_look(look, 0), free = curve_look(look, 1);
    add_curve(list, frame, points_of(chart.free, &LayerPoint::stress, &LayerPoint::height), free);
    add_curve(list, frame, points_of(chart.loaded, &LayerPoint::stress, &LayerPoint::height), loaded);
    for (const LayerPoint& l : chart.free)
        add_dot(list, frame, {l.stress, l.height}, free.colour, DotLook::ring);
    for (const LayerPoint& l : chart.loaded) add_dot(list, frame, {l.stress, l.height}, loaded.colour);
    return list;
}

}  // namespace overbend::chart
