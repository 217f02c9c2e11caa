#include "render/chart/bent_section.h"

#include <algorithm>
#include <cmath>

#include "render/picture/numbers.h"
#include "render/picture/strip_shape.h"
#include "sim/errors.h"
#include "sim/material/section_shape.h"
#include "sim/stroke/recorded_section.h"

namespace overbend::chart {

using namespace picture;

namespace {

constexpr double no_strain = 1e-9;  // plastic: below it a layer has not yielded

double middle(const stroke::Recording& r, int e) {
    return 0.5 * (r.blank_position[e] + r.blank_position[e + 1]);
}

// Where the plastic strain falls to nothing, seen from yielded layers a and b, a the nearer one to the core.
double end_of_yield(const LayerPoint& a, const LayerPoint& b) {
    const double slope = (b.plastic_strain - a.plastic_strain) / (b.height - a.height);
    return slope == 0.0 ? a.height : a.height - a.plastic_strain / slope;
}

}  // namespace

BentSection find_section(const stroke::Recording& r, double from, double to) {
    check_recording(r);
    BentSection section;
    section.loaded = stroke::loaded_state(r);
    const stroke::State& s = r.states[std::max(0, section.loaded)];
    double greatest = -1.0;
    const double low = std::min(from, to), high = std::max(from, to);
    for (int e = 0; e < static_cast<int>(s.curvature.size()); ++e) {
        const double at = middle(r, e);
        if (at < low || at > high || std::abs(s.curvature[e]) <= greatest) continue;
        greatest = std::abs(s.curvature[e]);
        section.element = e, section.blank_position = at;
        section.sense = s.curvature[e] < 0.0 ? -1.0 : 1.0;
    }
    if (greatest < 0.0 || section.loaded < 0)
        throw OutOfRange("section of the strip", fixed(low, 2) + " to " + fixed(high, 2) + " mm of the blank",
                         "no computed part of the strip lies there");
    return section;
}

BentSection section_at(const stroke::Recording& r, double blank_position) {
    check_recording(r);
    BentSection section;
    const int elements = static_cast<int>(r.blank_position.size()) - 1;
    section.element = std::clamp(static_cast<int>(along_at(r, blank_position)), 0, elements - 1);
    section.blank_position = middle(r, section.element);
    section.loaded = std::max(0, stroke::loaded_state(r));
    section.sense = r.states[section.loaded].curvature[section.element] < 0.0 ? -1.0 : 1.0;
    return section;
}

SectionPoint section_point(const stroke::Recording& r, const stroke::State& s, const BentSection& section) {
    const int e = section.element;
    const material::SectionShape shape({r.layer_height, r.layer_weight});
    material::LayerSquare squares[material::most_layers];
    double M = 0.0;
    if (shape.squares(stroke::section_of(r, s, e), squares))
        for (int i = 0; i < r.layers(); ++i)
            M += 0.5 * r.layer_weight[i] * s.hoop_stress[e * r.layers() + i] * squares[i].by(1) /
                 squares[i].value;
    return {section.sense * s.curvature[e], section.sense * M};
}

std::vector<Point> points_of(const std::vector<SectionPoint>& path) {
    std::vector<Point> points;
    points.reserve(path.size());
    for (const SectionPoint& p : path) points.emplace_back(p.curvature, p.moment);
    return points;
}

SectionPath section_path(const stroke::Recording& r, const BentSection& section, double instant) {
    SectionPath path;
    for (int i = 0; i <= static_cast<int>(instant); ++i) {
        const SectionPoint p = section_point(r, r.states[i], section);
        if (i <= section.loaded) path.loading.push_back(p);
        if (i >= section.loaded) path.unloading.push_back(p);
    }
    return path;
}

namespace {

material::LayerHeights section_heights(const material::SectionShape& shape, const stroke::Recording& r,
                                       const stroke::State& s, const BentSection& section) {
    material::LayerHeights h;
    if (!shape.heights(stroke::section_of(r, s, section.element), h))
        throw OutOfRange("section of the strip", "no stretch is left of a layer",
                         "no strip can be bent so sharply");
    return h;
}

}  // namespace

std::pair<double, double> section_surfaces(const stroke::Recording& r, const stroke::State& s,
                                           const BentSection& section) {
    const material::SectionShape shape(r.thickness, {});
    const material::LayerHeights h = section_heights(shape, r, s, section);
    return {h.y(shape.face(-1.0)), h.y(shape.face(1.0))};
}

std::vector<LayerPoint> section_layers(const stroke::Recording& r, const stroke::State& s,
                                       const BentSection& section) {
    const int e = section.element;
    const material::LayerHeights h =
        section_heights(material::SectionShape(r.thickness, r.layer_height), r, s, section);
    std::vector<LayerPoint> layers;
    layers.reserve(r.layer_height.size());
    for (int i = 0; i < r.layers(); ++i)
        layers.push_back({h.y(i), s.hoop_stress[e * r.layers() + i], s.plastic_strain[e * r.layers() + i]});
    return layers;
}

std::optional<ElasticCore> elastic_core(const std::vector<LayerPoint>& layers, double lower, double upper) {
    const int n = static_cast<int>(layers.size());
    // The layer of least strain is in the core or next to it.
    int least = 0;
    for (int i = 1; i < n; ++i)
        if (layers[i].plastic_strain < layers[least].plastic_strain) least = i;
    const auto yielded = [&](int i) { return layers[i].plastic_strain > no_strain; };
    int below = least, above = least;  // the nearest that have yielded, on either side of the core
    if (yielded(least)) {
        // None is without strain: a core can lie between the least one and its lesser neighbour alone.
        const bool up = least + 1 < n &&
                        (least == 0 || layers[least + 1].plastic_strain < layers[least - 1].plastic_strain);
        if (up)
            above = least + 1;
        else
            below = least - 1;
    } else {
        while (below >= 0 && !yielded(below)) --below;
        while (above < n && !yielded(above)) ++above;
    }
    ElasticCore core{lower, upper};
    if (below >= 1)
        core.low = end_of_yield(layers[below], layers[below - 1]);
    else if (below == 0)
        core.low = layers[0].height;
    if (above < n - 1)
        core.high = end_of_yield(layers[above], layers[above + 1]);
    else if (above == n - 1)
        core.high = layers[n - 1].height;
    if (!(core.high > core.low)) return {};
    return core;
}

}  // namespace overbend::chart
