#include "scenes/window/job/section_picture.h"

#include <algorithm>

#include "render/picture/strip_hit.h"

namespace overbend::window {

using picture::Colour;
using picture::Point;
using picture::Rect;
using picture::Shape;

namespace {

constexpr double least_chart = 13.5;  // letters high

void add_cased(picture::DrawingList& list, const picture::Path& path, const picture::ThemeColours& colours,
               double width, const Rect& clip) {
    list.items.push_back(Shape{path, std::nullopt, colours.stage, 2.6 * width, {}, clip});
    list.items.push_back(Shape{path, std::nullopt, colours.ink, width, {}, clip});
}

}  // namespace

void add_section_mark(picture::DrawingList& list, const stroke::Recording& recording,
                      const stroke::State& drawn, const picture::View& view, double blank_position, int layer,
                      picture::Theme theme) {
    const picture::ThemeColours& colours = picture::theme_colours(theme);
    const double u = list.height / 42.0;
    const picture::Station cut = picture::station_at(recording, drawn, blank_position);
    const Point lower = view.on_picture(cut.at(cut.edge.front()));
    const Point upper = view.on_picture(cut.at(cut.edge.back()));
    const Point across = (upper - lower).normalized();
    if (!across.allFinite()) return;
    // Two ticks that begin at the surfaces, so that the layers themselves are not covered.
    for (const auto& [from, way] : {std::pair<Point, double>(upper, 1.0), {lower, -1.0}})
        add_cased(list, picture::polyline({from, from + way * 1.3 * u * across}), colours, 0.16 * u,
                  view.stage);
    add_cased(list, picture::polyline({lower, upper}), colours, 0.07 * u, view.stage);
    const int k = std::clamp(layer, 0, static_cast<int>(cut.edge.size()) - 2);
    const Point at = view.on_picture(cut.at(0.5 * (cut.edge[k] + cut.edge[k + 1])));
    add_cased(list, picture::circle(at, 0.36 * u), colours, 0.14 * u, view.stage);
}

picture::DrawingList draw_section(const chart::SectionNow& section, int width, int height, double letter,
                                  picture::Theme theme, picture::Colouring colouring) {
    picture::DrawingList list{"", width, height, picture::theme_colours(theme).page};
    const bool three = height > 3.0 * least_chart * letter;
    const int count = three ? 3 : 2;
    const double each = static_cast<double>(height) / count;
    const chart::ChartLook look{theme, letter};
    const auto box = [&](int i) {
        return Rect{0.2 * letter, i * each + 0.3 * letter, width - 0.4 * letter, each - 0.8 * letter};
    };
    const bool stress = colouring == picture::Colouring::hoop_stress;
    if (three || stress) chart::add_stress_now(list, box(0), section, look);
    if (three || !stress) chart::add_plastic_strain_now(list, box(three ? 1 : 0), section, look);
    chart::add_moment_so_far(list, box(count - 1), section, look);
    return list;
}

}  // namespace overbend::window
