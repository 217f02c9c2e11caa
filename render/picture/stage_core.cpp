// The elastic core in the strip: the lines between yielded and never yielded layers, and its hatching.

#include <algorithm>
#include <cmath>

#include "render/picture/elastic_core.h"
#include "render/picture/stage_parts.h"

namespace overbend::picture {

namespace {

constexpr double front_opacity = 0.75;
constexpr double hatch_opacity = 0.5;

// The cores of all stations, and how far along the strip each is, mm.
struct CoreRun {
    std::vector<std::optional<Core>> core;
    std::vector<double> along;
};

// The fronts are known at layers and elements alone, so that they run in steps; they are smoothed over about
// a third of a thickness along the strip.
void smooth(const Sheet& sheet, CoreRun& run) {
    const double reach = 0.18 * sheet.recording.thickness;
    const std::vector<std::optional<Core>> rough = run.core;
    for (size_t i = 0, first = 0, end = 0; i < rough.size(); ++i) {
        while (run.along[i] - run.along[first] > reach) ++first;
        while (end < rough.size() && run.along[end] - run.along[i] <= reach) ++end;
        if (!rough[i]) continue;
        double low = 0.0, high = 0.0, weight = 0.0;
        for (size_t j = first; j < end; ++j) {
            if (!rough[j]) continue;
            const double w = 1.0 - std::abs(run.along[j] - run.along[i]) / (1.05 * reach);
            low += w * rough[j]->low;
            high += w * rough[j]->high;
            weight += w;
        }
        run.core[i]->low = low / weight;
        run.core[i]->high = high / weight;
        const auto whole = [](const std::optional<Core>& c) { return c && c->whole; };
        run.core[i]->whole = std::all_of(rough.begin() + first, rough.begin() + end, whole);
    }
}

CoreRun cores(const Sheet& sheet, const std::vector<Station>& at) {
    CoreRun run;
    for (size_t i = 0; i < at.size(); ++i) {
        run.core.push_back(elastic_core(sheet.recording, sheet.state, at[i]));
        run.along.push_back(i == 0 ? 0.0 : run.along.back() + (at[i].middle - at[i - 1].middle).norm());
    }
    smooth(sheet, run);
    return run;
}

void add_lines(Sheet& sheet, Path path, double width, double opacity) {
    if (path.empty()) return;
    add_on_stage(sheet, {std::move(path), {}, with_opacity(sheet.colours.outline, opacity), width});
}

// The upper and lower fronts, where they run within the section.
void add_fronts(Sheet& sheet, const std::vector<Station>& at, const CoreRun& run, double width) {
    Path path;
    for (const bool upper : {false, true}) {
        bool drawing = false;
        for (size_t i = 0; i < at.size(); ++i) {
            const std::optional<Core>& core = run.core[i];
            if (!core || core->whole) {
                drawing = false;
                continue;
            }
            const Point p = strip_point(sheet, at[i].at(upper ? core->high : core->low));
            path.push_back({drawing ? Verb::line : Verb::move, p, p, p});
            drawing = true;
        }
    }
    add_lines(sheet, std::move(path), width, front_opacity);
}

// The station nearest before a length along the strip.
size_t station_at(const CoreRun& run, double along) {
    const auto after = std::upper_bound(run.along.begin(), run.along.end(), along);
    return static_cast<size_t>(std::max<std::ptrdiff_t>(0, after - run.along.begin() - 1));
}

// Slanting strokes from the core's lower end to its upper one.
void add_hatching(Sheet& sheet, const std::vector<Station>& at, const CoreRun& run, double width) {
    const double spacing = 0.42 * sheet.unit() / sheet.view.scale;
    Path path;
    for (double s = 0.0; s < run.along.back(); s += spacing) {
        const size_t i = station_at(run, s);
        if (!run.core[i]) continue;
        const size_t j = station_at(run, s + 0.6 * (run.core[i]->high - run.core[i]->low));
        if (!run.core[j]) continue;
        add_stretch(path, strip_point(sheet, at[i].at(run.core[i]->low)),
                    strip_point(sheet, at[j].at(run.core[j]->high)));
    }
    add_lines(sheet, std::move(path), width, hatch_opacity);
}

}  // namespace

void add_core(Sheet& sheet, const std::vector<Station>& at, Hatch hatch) {
    const CoreRun run = cores(sheet, at);
    if (hatch == Hatch::shown) add_hatching(sheet, at, run, 0.8 * sheet.layout.line);
    add_fronts(sheet, at, run, sheet.layout.line);
}

void add_core_sample(Sheet& sheet, const Rect& box) {
    const double line = sheet.layout.line;
    add_fill(sheet.list, rectangle(box), diverging(0.0));
    Path strokes;
    const double spacing = 0.42 * sheet.unit();
    const double slant = 0.6 * box.height;
    for (double x = box.x + 0.5 * spacing; x + slant <= box.right(); x += spacing)
        add_stretch(strokes, {x, box.bottom()}, {x + slant, box.y});
    add_line(sheet.list, std::move(strokes), with_opacity(sheet.colours.outline, hatch_opacity), 0.8 * line);
    add_line(sheet.list, rectangle(box), with_opacity(sheet.colours.outline, front_opacity), line);
}

}  // namespace overbend::picture
