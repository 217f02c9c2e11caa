#include "render/picture/sheet_parts.h"

#include <cmath>
#include <utility>

#include "render/picture/flat_layout.h"
#include "render/picture/palette.h"

namespace overbend::picture {

void add_text(DrawingList& list, const std::string& words, const Point& at, double size, const Colour& colour,
              Across across, Weight weight) {
    list.items.push_back(Text{words, at, across, size, colour, weight, std::nullopt});
}

void add_line(DrawingList& list, const Point& a, const Point& b, const Colour& colour, double width,
              std::vector<double> dash) {
    list.items.push_back(Shape{polyline({a, b}), std::nullopt, colour, width, std::move(dash), std::nullopt});
}

void add_scale_bar(DrawingList& list, const Point& at, double pixels_per_mm, double longest, double unit) {
    const Colour& ink = theme_colours(Theme::light).ink;
    const double wanted = longest / pixels_per_mm, power = std::pow(10.0, std::floor(std::log10(wanted)));
    const double length = wanted / power >= 5.0 ? 5.0 * power : wanted / power >= 2.0 ? 2.0 * power : power;
    const double high = 0.3 * unit, half = 0.5 * pixels_per_mm * length;
    for (int i = 0; i < 2; ++i)
        list.items.push_back(Shape{rectangle({at.x() + i * half, at.y() - high, half, high}),
                                   i == 0 ? ink : list.background,
                                   ink,
                                   0.06 * unit,
                                   {},
                                   std::nullopt});
    add_text(list, short_number(length) + " mm", {at.x() + 2.0 * half + 0.6 * unit, at.y()}, unit, ink);
}

}  // namespace overbend::picture
