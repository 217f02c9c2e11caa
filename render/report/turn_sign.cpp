#include "render/report/turn_sign.h"

#include <cmath>

#include "render/picture/marks.h"

namespace overbend::report {

using picture::Turning;

void add_turn_sign(picture::DrawingList& list, Turning turning, const picture::Point& centre, double radius,
                   const picture::Colour& colour) {
    if (turning == Turning::none) return;
    const double flat = 0.5;  // of the ellipse
    const picture::Point axes(turning == Turning::over ? flat * radius : radius,
                              turning == Turning::end_for_end ? flat * radius : radius);
    const double from = -0.6, to = 4.6;  // rad, the way the arrow goes
    constexpr int parts = 32;
    std::vector<picture::Point> points;
    for (int i = 0; i <= parts; ++i) {
        const double t = from + (to - from) * i / parts;
        points.push_back(centre + picture::Point(axes.x() * std::cos(t), axes.y() * std::sin(t)));
    }
    picture::add_line(list, picture::polyline(points), colour, 0.2 * radius);
    const picture::Point along = (points.back() - points[parts - 3]).normalized();
    const picture::Point side(-along.y(), along.x());
    const picture::Point tip = points.back() + 0.55 * radius * along;
    picture::add_fill(list,
                      picture::polygon({tip, points.back() + 0.42 * radius * side - 0.15 * radius * along,
                                        points.back() - 0.42 * radius * side - 0.15 * radius * along}),
                      colour);
}

void add_hit_sign(picture::DrawingList& list, const picture::Point& centre, double radius,
                  const picture::Colour& colour) {
    const double arm = 0.6 * radius, width = 0.25 * radius;
    picture::add_line(list, picture::circle(centre, radius), colour, width);
    for (const double way : {-1.0, 1.0}) {
        const picture::Point tip(arm, way * arm);
        picture::add_line(list, picture::polyline({centre - tip, centre + tip}), colour, width);
    }
}

}  // namespace overbend::report
