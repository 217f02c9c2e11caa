#include "render/report/turn_sign.h"

#include <cmath>

namespace overbend::report {

std::string turn_words(Turned turned) {
    switch (turned) {
        case Turned::end_for_end:
            return "turn end for end";
        case Turned::over:
            return "roll over";
        case Turned::tipped:
            return "tip over";
        case Turned::no:
            break;
    }
    return "";
}

void add_turn_sign(picture::DrawingList& list, Turned turned, const picture::Point& centre, double radius,
                   const picture::Colour& colour) {
    if (turned == Turned::no) return;
    const double flat = 0.5;  // of the ellipse
    const picture::Point axes(turned == Turned::over ? flat * radius : radius,
                              turned == Turned::end_for_end ? flat * radius : radius);
    const double from = -0.6, to = 4.6;  // rad, the way the arrow goes
    constexpr int parts = 32;
    std::vector<picture::Point> points;
    for (int i = 0; i <= parts; ++i) {
        const double t = from + (to - from) * i / parts;
        points.push_back(centre + picture::Point(axes.x() * std::cos(t), axes.y() * std::sin(t)));
    }
    list.items.push_back(
        picture::Shape{picture::polyline(points), std::nullopt, colour, 0.2 * radius, {}, std::nullopt});
    const picture::Point along = (points.back() - points[parts - 3]).normalized();
    const picture::Point side(-along.y(), along.x());
    const picture::Point tip = points.back() + 0.55 * radius * along;
    list.items.push_back(
        picture::Shape{picture::polygon({tip, points.back() + 0.42 * radius * side - 0.15 * radius * along,
                                         points.back() - 0.42 * radius * side - 0.15 * radius * along}),
                       colour,
                       std::nullopt,
                       1.0,
                       {},
                       std::nullopt});
}

void add_hit_sign(picture::DrawingList& list, const picture::Point& centre, double radius,
                  const picture::Colour& colour) {
    const double arm = 0.6 * radius, width = 0.25 * radius;
    list.items.push_back(
        picture::Shape{picture::circle(centre, radius), std::nullopt, colour, width, {}, std::nullopt});
    for (const double way : {-1.0, 1.0}) {
        const picture::Point tip(arm, way * arm);
        list.items.push_back(picture::Shape{
            picture::polyline({centre - tip, centre + tip}), std::nullopt, colour, width, {}, std::nullopt});
    }
}

}  // namespace overbend::report
