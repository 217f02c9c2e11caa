#include "render/report/turn_sign.h"

#include <cmath>

#include "render/picture/marks.h"

namespace overbend::report {

using namespace picture;

void add_turn_sign(DrawingList& list, Turning turning, const Point& centre, double radius,
                   const Colour& colour) {
    if (turning == Turning::none) return;
    const double flat = 0.5;  // of the ellipse
    const Point axes(turning == Turning::over ? flat * radius : radius,
                     turning == Turning::end_for_end ? flat * radius : radius);
    const double from = -0.6, to = 4.6;  // rad, the way the arrow goes
    constexpr int parts = 32;
    std::vector<Point> points;
    for (int i = 0; i <= parts; ++i) {
        const double t = from + (to - from) * i / parts;
        points.push_back(centre + Point(axes.x() * std::cos(t), axes.y() * std::sin(t)));
    }
    add_line(list, polyline(points), colour, 0.2 * radius);
    const Point along = (points.back() - points[parts - 3]).normalized();
    const Point side(-along.y(), along.x());
    const Point tip = points.back() + 0.55 * radius * along;
    add_fill(list,
             polygon({tip, points.back() + 0.42 * radius * side - 0.15 * radius * along,
                      points.back() - 0.42 * radius * side - 0.15 * radius * along}),
             colour);
}

void add_hit_sign(DrawingList& list, const Point& centre, double radius, const Colour& colour) {
    const double arm = 0.6 * radius, width = 0.25 * radius;
    add_line(list, circle(centre, radius), colour, width);
    for (const double way : {-1.0, 1.0}) {
        const Point tip(arm, way * arm);
        add_line(list, polyline({centre - tip, centre + tip}), colour, width);
    }
}

}  // namespace overbend::report
