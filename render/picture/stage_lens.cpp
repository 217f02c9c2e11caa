// The magnifier on the stage: layers, elastic core and neutral line of the bend, and where it looks.

#include <algorithm>
#include <cmath>

#include "render/picture/elastic_core.h"
#include "render/picture/lens_place.h"
#include "render/picture/stage_parts.h"
#include "render/picture/text_width.h"

namespace overbend::picture {

namespace {

// The elements whose middle lies near the place that is looked at, with some to spare.
std::pair<int, int> elements_near(const Sheet& sheet, const Place& place, double reach) {
    const stroke::State& s = sheet.state;
    const int elements = static_cast<int>(s.stretch.size());
    int first = elements;
    int last = -1;
    for (int e = 0; e < elements; ++e) {
        const Place middle(0.5 * (s.x[e] + s.x[e + 1]), 0.5 * (s.y[e] + s.y[e + 1]));
        const double half = 0.5 * std::hypot(s.x[e + 1] - s.x[e], s.y[e + 1] - s.y[e]);
        if ((middle - place).norm() > reach + half) continue;
        first = std::min(first, e);
        last = std::max(last, e);
    }
    return {first, last};
}

void add_neutral_line(Sheet& lens, const std::vector<Station>& at) {
    const double u = lens.unit();
    Path path;
    bool drawing = false;
    for (const Station& s : at) {
        const std::optional<double> height = neutral_height(lens.recording, lens.state, s);
        if (height) {
            const Point p = strip_point(lens, s.at(*height));
            path.push_back({drawing ? Verb::line : Verb::move, p, p, p});
        }
        drawing = height.has_value();
    }
    if (path.empty()) return;
    add_on_stage(lens, {path, {}, with_opacity(diverging(0.0), 0.85), 0.44 * u});
    add_on_stage(lens, {path, {}, neutral_line_colour(), 0.2 * u, {0.8 * u, 0.4 * u}});
}

// What the magnifier shows, on a sheet of its own whose stage is its box.
void add_magnified(Sheet& sheet, const LensPlace& lens, const View& view) {
    const double u = sheet.unit();
    Sheet inner{sheet.recording, sheet.state,  sheet.actual, sheet.instant,
                sheet.info,      sheet.layout, view,         sheet.colours,
                sheet.list,      {},           {},           {}};
    add_fill(sheet.list, rectangle(lens.box), sheet.colours.stage);
    add_tools(inner);
    const double reach = 0.5 * std::hypot(view.width_mm(), view.height_mm()) + sheet.recording.thickness;
    const auto [first, last] = elements_near(sheet, view.centre, reach);
    if (last < first) return;
    const std::vector<Station> at =
        stations(sheet.recording, sheet.state, 0.35 * u / view.scale, first, last);
    add_layers(inner, at);
    add_core(inner, at, Hatch::shown);
    add_neutral_line(inner, at);
}

// The piece of the stage that is magnified, and two lines from it to the magnifier's edge.
void add_marker(Sheet& sheet, const LensPlace& lens, const Place& looked_at) {
    const double u = sheet.unit();
    const Point centre = sheet.view.on_picture(looked_at);
    const Rect marked{centre.x() - 0.5 * lens.box.width / lens.magnification,
                      centre.y() - 0.5 * lens.box.height / lens.magnification,
                      lens.box.width / lens.magnification, lens.box.height / lens.magnification};
    add_on_stage(sheet, {rectangle(marked, 0.3 * u), {}, sheet.colours.ink, 1.3 * sheet.layout.line});
    sheet.taken.push_back(marked);
    // Between the corners that face one another.
    const bool left = lens.box.centre().x() < centre.x();
    const bool above = lens.box.centre().y() < centre.y();
    const double near_x = left ? marked.x : marked.right();
    const double box_x = left ? lens.box.right() : lens.box.x;
    const bool beside = left ? lens.box.right() < marked.x : lens.box.x > marked.right();
    if (beside) {
        add_cased_line(sheet, polyline({{near_x, marked.y}, {box_x, lens.box.y}}), sheet.colours.muted,
                       sheet.layout.line);
        add_cased_line(sheet, polyline({{near_x, marked.bottom()}, {box_x, lens.box.bottom()}}),
                       sheet.colours.muted, sheet.layout.line);
        return;
    }
    const double near_y = above ? marked.y : marked.bottom();
    const double box_y = above ? lens.key.bottom() : lens.box.y;
    add_cased_line(sheet, polyline({{marked.x, near_y}, {lens.box.x, box_y}}), sheet.colours.muted,
                   sheet.layout.line);
    add_cased_line(sheet, polyline({{marked.right(), near_y}, {lens.box.right(), box_y}}),
                   sheet.colours.muted, sheet.layout.line);
}

// Shorter where the magnifier is narrow.
std::string times(double magnification, double width, double size) {
    const std::string number = fixed(magnification, magnification == std::floor(magnification) ? 0 : 1);
    const std::string words = number + " times as large";
    return text_width(words, size, Weight::bold) <= width ? words : number + " times";
}

void add_key(Sheet& sheet, const LensPlace& lens) {
    const double u = sheet.unit();
    const Rect& key = lens.key;
    add_fill(sheet.list, rectangle(key), sheet.colours.stage);
    const double x = key.x + 0.6 * u;
    add_text_on_middle(sheet.list, times(lens.magnification, key.width - 1.2 * u, u), {x, key.y + 0.95 * u},
                       u, sheet.colours.ink, Across::left, Weight::bold);
    const double y = key.y + 2.3 * u;
    add_fill(sheet.list, rectangle({x, y - 0.5 * u, 2.4 * u, u}), diverging(0.0));
    add_line(sheet.list, polyline({{x, y}, {x + 2.4 * u, y}}), neutral_line_colour(), 0.2 * u,
             {0.8 * u, 0.4 * u});
    add_text_on_middle(sheet.list, "neutral line", {x + 2.9 * u, y}, u, sheet.colours.ink);
}

}  // namespace

bool shows_lens(const Sheet& sheet) {
    return sheet.info.lens == Lens::shown && sheet.view.lens && !sheet.info.motion;
}

void add_lens_marker(Sheet& sheet) {
    if (!shows_lens(sheet)) return;
    const LensPlace& lens = *sheet.view.lens;
    add_marker(sheet, lens, spot_on(sheet.recording, sheet.state, lens.blank_position).at);
}

void add_lens(Sheet& sheet) {
    if (!shows_lens(sheet)) return;
    const LensPlace& lens = *sheet.view.lens;
    const Place looked_at = spot_on(sheet.recording, sheet.state, lens.blank_position).at;
    add_magnified(sheet, lens, lens_view(lens, sheet.view, looked_at));
    add_key(sheet, lens);
    const Rect frame{lens.box.x, lens.box.y, lens.box.width, lens.box.height + lens.key.height};
    add_line(sheet.list, rectangle(lens.box), sheet.colours.ink, 0.14 * sheet.unit());
    add_line(sheet.list, rectangle(frame), sheet.colours.ink, 0.14 * sheet.unit());
}

void add_note(Sheet& sheet) {
    if (sheet.info.springback_scale == 1.0 || !sheet.info.ghost || sheet.info.motion) return;
    const double u = sheet.unit();
    const double scale = sheet.info.springback_scale;
    const std::string number = fixed(scale, scale == std::floor(scale) ? 0 : 1);
    std::string words = "springback drawn " + number + " times as large";
    if (text_width(words, u, Weight::bold) > sheet.view.note.width - u) words = "springback \u00d7 " + number;
    const double width = text_width(words, u, Weight::bold) + u;
    const bool left = sheet.view.note.centre().x() < sheet.view.stage.centre().x();
    const Rect box{left ? sheet.view.note.x : sheet.view.note.right() - width, sheet.view.note.y, width,
                   sheet.view.note.height};
    add_plate(sheet, box, sheet.colours.loaded);
    add_text_on_middle(sheet.list, words, box.centre(), u, sheet.colours.loaded, Across::middle,
                       Weight::bold);
}

}  // namespace overbend::picture
