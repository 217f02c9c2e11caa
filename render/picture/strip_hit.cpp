#include "render/picture/strip_hit.h"

#include <algorithm>
#include <cmath>

namespace overbend::picture {

StripHit nearest_on_strip(const stroke::Recording& r, const stroke::State& s, const Place& place) {
    const int elements = static_cast<int>(r.blank_position.size()) - 1;
    StripHit hit;
    double least = 1e300;
    for (int e = 0; e < elements; ++e) {
        const Place a(s.x[e], s.y[e]), side = Place(s.x[e + 1], s.y[e + 1]) - a;
        const double part = std::clamp((place - a).dot(side) / std::max(1e-12, side.squaredNorm()), 0.0, 1.0);
        const double away = (a + part * side - place).norm();
        if (away >= least) continue;
        least = away;
        hit.along = e + part;
    }
    const int e = std::min(static_cast<int>(hit.along), elements - 1);
    const double part = hit.along - e;
    hit.blank_position = r.blank_position[e] + part * (r.blank_position[e + 1] - r.blank_position[e]);
    const Station cut = stations(r, s, 1e300, e, e).front();
    const Spot spot = spot_along(r, s, hit.along);
    const Place off = place - spot.at;
    hit.height = Place(-std::sin(spot.theta), std::cos(spot.theta)).dot(off);
    const double beside = std::abs(Place(std::cos(spot.theta), std::sin(spot.theta)).dot(off));
    const double lower = cut.edge.front(), upper = cut.edge.back();
    hit.outside = std::hypot(std::max({0.0, lower - hit.height, hit.height - upper}),
                             hit.along <= 0.0 || hit.along >= elements ? beside : 0.0);
    hit.height = std::clamp(hit.height, lower, upper);
    while (hit.layer + 1 < r.layers() && hit.height > cut.edge[hit.layer + 1]) ++hit.layer;
    return hit;
}

Station station_at(const stroke::Recording& r, const stroke::State& s, double blank_position) {
    const int elements = static_cast<int>(r.blank_position.size()) - 1;
    const double along = along_at(r, blank_position);
    const int e = std::clamp(static_cast<int>(along), 0, elements - 1);
    Station cut = stations(r, s, 1e300, e, e).front();
    const Spot spot = spot_along(r, s, along);
    cut.along = along;
    cut.middle = spot.at;
    cut.theta = spot.theta;
    return cut;
}

}  // namespace overbend::picture
