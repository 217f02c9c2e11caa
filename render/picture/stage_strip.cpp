// The strip with its layers in colour, and the dashed outline of what it was.

#include <algorithm>
#include <cmath>

#include "render/picture/stage_parts.h"

namespace overbend::render {

namespace {

using stroke::Recording;
using stroke::State;

// Steps of colour on either side of nought: more than the eye tells apart, few enough that equal neighbours
// are painted as one.
constexpr int colour_steps = 60;

// The value of a layer: that of the element in its middle, in between blended along the strip.
double layer_value(const std::vector<float>& values, int layers, int elements, int layer, double along) {
    const double from_middle = along - 0.5;
    const int e = std::min(elements - 1, std::max(0, static_cast<int>(std::floor(from_middle))));
    const int next = std::min(elements - 1, e + 1);
    const double w = std::min(1.0, std::max(0.0, from_middle - e));
    return (1.0 - w) * static_cast<double>(values[e * layers + layer]) +
           w * static_cast<double>(values[next * layers + layer]);
}

std::vector<int> colour_steps_of_layer(const Sheet& sheet, const std::vector<Station>& at, int layer) {
    const State& s = sheet.state;
    const bool stress = sheet.info.colouring == Colouring::hoop_stress;
    const int layers = sheet.recording.layers();
    const int elements = static_cast<int>(s.stretch.size());
    std::vector<int> result;
    for (size_t i = 0; i + 1 < at.size(); ++i) {
        const double along = 0.5 * (at[i].along + at[i + 1].along);
        const double value =
            layer_value(stress ? s.hoop_stress : s.plastic_strain, layers, elements, layer, along);
        const double part = std::min(1.0, std::max(-1.0, value / sheet.info.colour_limit));
        result.push_back(static_cast<int>(std::lround(colour_steps * part)));
    }
    return result;
}

// A run of one colour. It reaches from the layer's lower edge to the strip's upper surface, and a station
// further than its own end: what lies there is painted over by the next, so that no gap can shine through
// between them.
Path run_path(const Sheet& sheet, const std::vector<Station>& at, size_t first, size_t end, int layer) {
    const size_t last = std::min(end + 1, at.size() - 1);
    std::vector<Point> points;
    for (size_t i = first; i <= last; ++i) points.push_back(strip_point(sheet, at[i].at(at[i].edge[layer])));
    for (size_t i = last + 1; i-- > first;) points.push_back(strip_point(sheet, at[i].at(at[i].edge.back())));
    return polygon(points);
}

void add_layer(Sheet& sheet, const std::vector<Station>& at, int layer) {
    const std::vector<int> step = colour_steps_of_layer(sheet, at, layer);
    for (size_t first = 0; first < step.size();) {
        size_t end = first + 1;
        while (end < step.size() && step[end] == step[first]) ++end;
        const double part = static_cast<double>(step[first]) / colour_steps;
        Shape run;
        run.path = run_path(sheet, at, first, end, layer);
        run.fill = sheet.info.colouring == Colouring::hoop_stress ? diverging(part) : sequential(part);
        run.clip = sheet.view.stage;
        sheet.list.items.emplace_back(std::move(run));
        first = end;
    }
}

Path outline_path(const Sheet& sheet, const std::vector<Station>& at) {
    std::vector<Point> points;
    for (const Place& p : strip_outline(at)) points.push_back(strip_point(sheet, p));
    return polygon(points);
}

}  // namespace

void add_strip(Sheet& sheet) {
    const std::vector<Station> at =
        stations(sheet.recording, sheet.state, 0.35 * sheet.unit() / sheet.view.scale);
    for (const Station& s : at) sheet.kept_clear.push_back(strip_point(sheet, s.middle));
    for (int k = 0; k < sheet.recording.layers(); ++k) add_layer(sheet, at, k);
    Shape outline;
    outline.path = outline_path(sheet, at);
    outline.stroke = sheet.colours.outline;
    outline.line_width = 0.1 * sheet.unit();
    outline.clip = sheet.view.stage;
    sheet.list.items.emplace_back(std::move(outline));
}

void add_ghost(Sheet& sheet) {
    if (!sheet.info.ghost) return;
    const State ghost = state_at(sheet.recording, *sheet.info.ghost);
    const double u = sheet.unit();
    Shape outline;
    outline.path = outline_path(sheet, stations(sheet.recording, ghost, u / sheet.view.scale));
    outline.stroke = sheet.colours.loaded;
    outline.line_width = 0.14 * u;
    outline.dash = {0.7 * u, 0.45 * u};
    outline.clip = sheet.view.stage;
    sheet.list.items.emplace_back(std::move(outline));
}

}  // namespace overbend::render
