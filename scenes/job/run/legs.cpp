#include "scenes/job/run/legs.h"

#include <cmath>

#include "sim/strip/place.h"
#include "sim/units.h"

namespace overbend::job {

using Vec2 = Eigen::Vector2d;

strip::StripState as_drawn(strip::StripState s) {
    if (s.face_down) strip::turn_over(s);
    if (s.turned) strip::turn_end_for_end(s);
    return s;
}

bool is_doubled(const files::Bend& bend) {
    constexpr double doubled = 170.0 * degree;
    return std::abs(bend.angle) > doubled;
}

double drawn_half(const files::Case& c, const files::Bend& bend) {
    const double radius = bend.inside_radius + 0.5 * c.thickness;
    return is_doubled(bend) ? radius : radius * std::tan(0.5 * std::abs(bend.angle));
}

FlatLine flat_line(const Blank& blank, const strip::StripState& s, int flat) {
    const strip::MidPoint m = strip::mid_point(s, blank.flat_middle(flat));
    return {{m.x, m.y}, {std::cos(m.theta), std::sin(m.theta)}};
}

Vec2 crossing(const FlatLine& a, const FlatLine& b) {
    const double cross = a.along.x() * b.along.y() - a.along.y() * b.along.x();
    const Vec2 ab = b.at - a.at;
    return a.at + a.along * ((ab.x() * b.along.y() - ab.y() * b.along.x()) / cross);
}

Vec2 point_of(const strip::StripState& s, double at) {
    const strip::MidPoint m = strip::mid_point(s, at);
    return {m.x, m.y};
}

Vec2 furthest(const Blank& blank, const strip::StripState& s, int bend, const Vec2& along) {
    const double from = blank.flat_middle(bend), to = blank.flat_middle(bend + 1);
    Vec2 found = point_of(s, from);
    for (int i = 0; i < s.nodes(); ++i) {
        const Vec2 node(s.x[i], s.y[i]);
        if (s.blank_position[i] > from && s.blank_position[i] < to && node.dot(along) > found.dot(along))
            found = node;
    }
    return found;
}

}  // namespace overbend::job
