#include "render/chart/section_now.h"

#include <tuple>

#include "render/picture/marks.h"
#include "render/picture/stage.h"

namespace overbend::chart {

using namespace picture;

namespace {

// The whole stroke's extents; every axis but that of the heights includes 0.
void take_in_stroke(const stroke::Recording& r, const BentSection& section, SectionNow& now) {
    now.height = nothing_yet();
    now.stress = now.plastic_strain = now.curvature = now.moment = {0.0, 0.0};
    for (const stroke::State& s : r.states) {
        const auto [lower, upper] = section_surfaces(r, s, section);
        now.height.take_in(lower), now.height.take_in(upper);
        for (const LayerPoint& l : section_layers(r, s, section)) {
            now.stress.take_in(l.stress);
            now.plastic_strain.take_in(100.0 * l.plastic_strain);
        }
        const SectionPoint p = section_point(r, s, section);
        now.curvature.take_in(p.curvature);
        now.moment.take_in(p.moment);
    }
}

enum class Quantity { stress, plastic_strain };

double value_of(const LayerPoint& layer, Quantity quantity) {
    return quantity == Quantity::stress ? layer.stress : 100.0 * layer.plastic_strain;
}

void add_layers_now(DrawingList& list, const Rect& box, const SectionNow& now, const ChartLook& look,
                    Quantity quantity) {
    ChartInfo info;
    const bool stress = quantity == Quantity::stress;
    info.across_words = stress ? "hoop stress, MPa" : "plastic strain, %";
    info.up_words = "height above the mid-line, mm";
    info.across = stress ? now.stress : now.plastic_strain;
    info.up = now.height;
    ChartFrame frame = add_frame(list, box, info, look);
    add_levels(list, frame, {now.lower, now.upper});
    std::vector<Point> values;
    for (const LayerPoint& l : now.layers) values.emplace_back(value_of(l, quantity), l.height);
    const CurveLook curve = curve_look(look, 0);
    add_curve(list, frame, values, curve);
    for (const Point& v : values) add_dot(list, frame, v, curve.colour);
    if (!now.marked || *now.marked < 0 || *now.marked >= static_cast<int>(values.size())) return;
    const Colour mark = curve_look(look, 1).colour;
    add_line(list, circle(frame.at(values[*now.marked]), 0.62 * look.unit), mark, 0.2 * look.unit);
}

}  // namespace

SectionNow section_now(const stroke::Recording& r, double instant, double blank_position,
                       std::optional<int> marked_layer) {
    const stroke::State state = state_at(r, instant);
    const BentSection section = section_at(r, blank_position);
    SectionNow now;
    now.blank_position = section.blank_position;
    now.sense = section.sense;
    std::tie(now.lower, now.upper) = section_surfaces(r, state, section);
    now.layers = section_layers(r, state, section);
    now.marked = marked_layer;
    now.at = section_point(r, state, section);
    now.path = section_path(r, section, instant);
    (instant > section.loaded ? now.path.unloading : now.path.loading).push_back(now.at);
    take_in_stroke(r, section, now);
    return now;
}

void put_before(SectionNow& now, const stroke::Recording& earlier, Faces faces) {
    BentSection section = section_at(earlier, now.blank_position);
    section.sense = faces == Faces::as_now ? now.sense : -now.sense;
    for (const stroke::State& s : earlier.states) {
        const SectionPoint p = section_point(earlier, s, section);
        now.before.push_back(p);
        now.curvature.take_in(p.curvature);
        now.moment.take_in(p.moment);
    }
}

void add_stress_now(DrawingList& list, const Rect& box, const SectionNow& now, const ChartLook& look) {
    add_layers_now(list, box, now, look, Quantity::stress);
}

void add_plastic_strain_now(DrawingList& list, const Rect& box, const SectionNow& now,
                            const ChartLook& look) {
    add_layers_now(list, box, now, look, Quantity::plastic_strain);
}

void add_moment_so_far(DrawingList& list, const Rect& box, const SectionNow& now, const ChartLook& look) {
    ChartInfo info;
    info.across_words = "curvature, 1/mm";
    info.up_words = "moment, N mm per mm of width";
    info.across = now.curvature;
    info.up = now.moment;
    const CurveLook earlier{theme_colours(look.theme).muted, {}, 0.1 * look.unit};
    info.key = {{"pressing", curve_look(look, 0)}, {"released", curve_look(look, 1)}};
    if (!now.before.empty()) info.key.push_back({"before", earlier});
    ChartFrame frame = add_frame(list, box, info, look);
    add_curve(list, frame, points_of(now.before), earlier);
    add_curve(list, frame, points_of(now.path.loading), curve_look(look, 0));
    add_curve(list, frame, points_of(now.path.unloading), curve_look(look, 1));
    add_dot(list, frame, {now.at.curvature, now.at.moment}, theme_colours(look.theme).ink);
}

}  // namespace overbend::chart
