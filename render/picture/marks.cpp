#include "render/picture/marks.h"

#include <utility>

#include "render/picture/numbers.h"
#include "render/picture/palette.h"

namespace overbend::picture {

void add_fill(DrawingList& list, Path path, const Colour& fill) {
    list.items.emplace_back(Shape{std::move(path), fill});
}

void add_line(DrawingList& list, Path path, const Colour& colour, double width, std::vector<double> dash) {
    list.items.emplace_back(Shape{std::move(path), std::nullopt, colour, width, std::move(dash)});
}

void add_shape(DrawingList& list, Path path, const Colour& fill, const Colour& edge, double width) {
    list.items.emplace_back(Shape{std::move(path), fill, edge, width});
}

void add_text(DrawingList& list, const std::string& words, const Point& at, double size, const Colour& colour,
              Across across, Weight weight) {
    if (words.empty()) return;
    list.items.push_back(Text{words, at, across, size, colour, weight, std::nullopt});
}

void add_text_on_middle(DrawingList& list, const std::string& words, const Point& at, double size,
                        const Colour& colour, Across across, Weight weight) {
    add_text(list, words, {at.x(), baseline_for_middle(at.y(), size)}, size, colour, across, weight);
}

void add_line(DrawingList& list, const Point& a, const Point& b, const Colour& colour, double width,
              std::vector<double> dash) {
    add_line(list, polyline({a, b}), colour, width, std::move(dash));
}

void add_scale_bar(DrawingList& list, const Point& at, double pixels_per_mm, double longest, double unit) {
    const Colour& ink = theme_colours(Theme::light).ink;
    const double length = rounded_down(longest / pixels_per_mm);
    const double high = 0.3 * unit, half = 0.5 * pixels_per_mm * length;
    for (int i = 0; i < 2; ++i)
        add_shape(list, rectangle({at.x() + i * half, at.y() - high, half, high}),
                  i == 0 ? ink : list.background, ink, 0.06 * unit);
    add_text(list, short_number(length) + " mm", {at.x() + 2.0 * half + 0.6 * unit, at.y()}, unit, ink);
}

}  // namespace overbend::picture
