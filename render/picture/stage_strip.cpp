// The strip with its layers in colour, and the dashed outline of what it was.

#include <algorithm>
#include <cmath>
#include <map>

#include "render/picture/stage_parts.h"

namespace overbend::picture {

namespace {

using stroke::Recording;
using stroke::State;

// Steps of colour on either side of zero: more than the eye tells apart; equal neighbours are painted as one.
constexpr int colour_steps = 60;

// Neighbouring layers that are painted as one where they are thinner than a pixel: each band's first layer,
// and the count of layers as its end.
std::vector<int> bands(const Sheet& sheet) {
    const int layers = sheet.recording.layers();
    const double least = 1.2;  // pixels
    const double thickness = sheet.recording.thickness * sheet.view.scale;
    const int count = std::max(1, std::min(layers, static_cast<int>(thickness / least)));
    return first_layers(layers, count);
}

// The colour's step of a band between each two stations: that of the mean of its layers.
std::vector<int> colour_steps_of_band(const Sheet& sheet, const std::vector<Station>& at, int first,
                                      int end) {
    const State& s = sheet.state;
    const bool stress = sheet.info.colouring == Colouring::hoop_stress;
    const int layers = sheet.recording.layers();
    std::vector<int> result;
    for (size_t i = 0; i + 1 < at.size(); ++i) {
        const double along = 0.5 * (at[i].along + at[i + 1].along);
        double value = 0.0;
        for (int k = first; k < end; ++k)
            value += layer_value(stress ? s.hoop_stress : s.plastic_strain, layers, k, along);
        const double part = value / (end - first) / sheet.info.colour_limit;
        result.push_back(static_cast<int>(std::lround(colour_steps * std::min(1.0, std::max(-1.0, part)))));
    }
    return result;
}

constexpr double seam =
    0.7;  // pixels by which patches reach over their neighbours, so that no gap shines through

// Moved on by the seam in the direction of another point; not beyond it.
Point moved_on(const Point& from, const Point& to) {
    const double way = (to - from).norm();
    return way <= seam ? to : Point(from + seam / way * (to - from));
}

// Adds a run of one colour, from one station to another, of a band.
void add_run(const Sheet& sheet, const std::vector<Station>& at, size_t first, size_t end, int low, int high,
             Path& path) {
    const size_t count = end - first + 1;
    std::vector<Point> points(2 * count);
    const auto place = [&](size_t i, int edge) { return strip_point(sheet, at[i].at(at[i].edge[edge])); };
    for (size_t i = first; i <= end; ++i) {
        points[i - first] = place(i, low);
        points[2 * count - 1 - (i - first)] =
            moved_on(place(i, high), place(i, static_cast<int>(at[i].edge.size()) - 1));
    }
    if (end + 1 < at.size()) {
        points[count - 1] = moved_on(points[count - 1], place(end + 1, low));
        points[count] = moved_on(points[count], place(end + 1, high));
    }
    for (size_t i = 0; i < points.size(); ++i)
        path.push_back({i == 0 ? Verb::move : Verb::line, points[i], points[i], points[i]});
    path.push_back({Verb::close, Point::Zero(), Point::Zero(), Point::Zero()});
}

void add_patches(Sheet& sheet, int step, Path path) {
    const double part = static_cast<double>(step) / colour_steps;
    Shape patches{std::move(path),
                  sheet.info.colouring == Colouring::hoop_stress ? diverging(part) : sequential(part)};
    patches.edges = Edges::coarse;
    add_on_stage(sheet, std::move(patches));
}

}  // namespace

Path outline_path(const Sheet& sheet, const std::vector<Station>& at) {
    std::vector<Point> points;
    for (const Place& p : strip_outline(at)) points.push_back(strip_point(sheet, p));
    return polygon(points);
}

void add_layers(Sheet& sheet, const std::vector<Station>& at) {
    // Patches of one colour are one path, which is far quicker to paint than many; those of the commonest are
    // the ground for the others.
    const std::vector<int> band = bands(sheet);
    std::vector<std::vector<int>> steps;
    std::map<int, size_t> count;
    for (size_t b = 0; b + 1 < band.size(); ++b) {
        steps.push_back(colour_steps_of_band(sheet, at, band[b], band[b + 1]));
        for (const int step : steps.back()) ++count[step];
    }
    const int ground = std::max_element(count.begin(), count.end(), [](const auto& a, const auto& b) {
                           return a.second < b.second;
                       })->first;
    add_patches(sheet, ground, outline_path(sheet, at));
    std::map<int, Path> patches;
    for (size_t b = 0; b < steps.size(); ++b)
        for (size_t first = 0, end = 0; first < steps[b].size(); first = end) {
            for (end = first + 1; end < steps[b].size() && steps[b][end] == steps[b][first];) ++end;
            if (steps[b][first] != ground)
                add_run(sheet, at, first, end, band[b], band[b + 1], patches[steps[b][first]]);
        }
    for (auto& [step, path] : patches) add_patches(sheet, step, std::move(path));
    // Of a strip as thin as that not much but its outline is seen.
    const double line = 0.1 * sheet.unit();
    const bool thin = sheet.recording.thickness * sheet.view.scale < 3.0 * line;
    add_on_stage(sheet,
                 {outline_path(sheet, at), {}, thin ? sheet.colours.ink : sheet.colours.outline, line});
}

void add_strip(Sheet& sheet) {
    const std::vector<Station> at =
        stations(sheet.recording, sheet.state, 0.35 * sheet.unit() / sheet.view.scale);
    for (const Station& s : at) sheet.kept_clear.push_back(strip_point(sheet, s.middle));
    add_layers(sheet, at);
    // A hatching is only clutter where the strip is thin on the picture.
    const double thickness = sheet.recording.thickness * sheet.view.scale;
    if (thickness > 0.5 * sheet.unit())
        add_core(sheet, at, thickness > 1.5 * sheet.unit() ? Hatch::shown : Hatch::hidden);
}

void add_ghost(Sheet& sheet) {
    if (!sheet.info.ghost) return;
    const State ghost = state_at(sheet.recording, *sheet.info.ghost);
    const double u = sheet.unit();
    add_on_stage(sheet, {outline_path(sheet, stations(sheet.recording, ghost, u / sheet.view.scale)),
                         {},
                         sheet.colours.loaded,
                         0.14 * u,
                         {0.7 * u, 0.45 * u}});
}

}  // namespace overbend::picture
