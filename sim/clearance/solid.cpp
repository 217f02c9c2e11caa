#include "sim/clearance/solid.h"

#include <box2d/b2_distance.h>

#include <algorithm>
#include <cassert>
#include <cmath>

#include "sim/tool/signed_distance.h"

namespace overbend::clearance {

namespace {

using tool::Box;

constexpr double touching = 2e-5;  // mm, below which single precision cannot tell apart from an overlap

b2Vec2 single(const Vec2& v) {
    return {static_cast<float>(v.x()), static_cast<float>(v.y())};
}
Vec2 twice(const b2Vec2& v) {
    return {static_cast<double>(v.x), static_cast<double>(v.y)};
}

Box box_of(const Vec2* begin, const Vec2* end) {
    Box box{*begin, *begin};
    for (const Vec2* v = begin + 1; v != end; ++v)
        box.low = box.low.cwiseMin(*v), box.high = box.high.cwiseMax(*v);
    return box;
}

// Square of the distance of two boxes; 0 when they overlap.
double square_between(const Box& a, const Box& b) {
    const double dx = std::max({a.low.x() - b.high.x(), 0.0, b.low.x() - a.high.x()});
    const double dy = std::max({a.low.y() - b.high.y(), 0.0, b.low.y() - a.high.y()});
    return dx * dx + dy * dy;
}

struct Corners2 {
    b2Vec2 at[Corners::most];
    int count = 0;
};
Corners2 singles(const Corners& corners, const Vec2& shift) {
    Corners2 all;
    for (const Vec2& c : corners) all.at[all.count++] = single(c - shift);
    return all;
}

b2DistanceOutput between(const b2Vec2* a, int count_a, const b2Vec2* b, int count_b) {
    b2DistanceInput input;
    input.proxyA.Set(a, count_a, 0.0f);
    input.proxyB.Set(b, count_b, 0.0f);
    input.transformA.SetIdentity();
    input.transformB.SetIdentity();
    input.useRadii = false;
    b2SimplexCache cache;
    cache.count = 0;
    b2DistanceOutput output;
    b2Distance(&output, &cache, &input);
    return output;
}

// How far a point is inside a convex piece, to its nearest side; < 0 outside.
double depth_in(const Corners& corners, const Vec2& p) {
    double depth = 1e300;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec2 side = corners[(i + 1) % corners.size()] - corners[i], to = p - corners[i];
        depth = std::min(depth, (side.x() * to.y() - side.y() * to.x()) / side.norm());
    }
    return depth;
}

// The deepest place of the overlap; corners in the solid's coordinates. Distance 0 when nothing is inside.
Gap deepest(const Solid& solid, const Corners& corners) {
    constexpr double spacing = 0.2;  // mm, between the places that are looked at along the piece's sides
    constexpr int most = 200;
    Gap gap;
    gap.distance = 0.0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec2 from = corners[i], side = corners[(i + 1) % corners.size()] - from;
        const int count = std::clamp(static_cast<int>(std::ceil(side.norm() / spacing)), 1, most);
        for (int k = 0; k < count; ++k) {
            const Vec2 p = from + side * k / count;
            const Box& box = solid.outline().box();
            if (p.x() < box.low.x() || p.x() > box.high.x() || p.y() < box.low.y() || p.y() > box.high.y())
                continue;
            const tool::Nearest nearest = tool::nearest(solid.outline(), p);
            if (nearest.distance < gap.distance) gap = {nearest.distance, p, nearest.foot};
        }
    }
    for (const Vec2& p : solid.points()) {
        const double depth = depth_in(corners, p);
        if (-depth < gap.distance) gap = {-depth, p, p};
    }
    return gap;
}

}  // namespace

Corners::Corners(std::initializer_list<Vec2> corners) : count_(corners.size()) {
    assert(corners.size() <= most);
    std::copy(corners.begin(), corners.end(), at_.begin());
}

Solid::Solid(const tool::ArcOutline& outline, double sag)
    : outline_(outline), points_(tool::sample(outline, sag)) {
    for (std::size_t i = 0; i < points_.size(); ++i) {
        const Vec2 ends[] = {points_[i], points_[(i + 1) % points_.size()]};
        edge_boxes_.push_back(box_of(ends, ends + 2));
    }
}

Gap gap(const Solid& solid, const Vec2& position, const Convex& piece, double within) {
    Box box = box_of(piece.corners.begin(), piece.corners.end());
    box.low -= position, box.high -= position;
    if (square_between(box, solid.outline_.box()) > within * within) return {};

    const Corners2 corners = singles(piece.corners, position);
    Gap least;
    double nearest = std::max(within, 2.0 * touching);
    const std::size_t count = solid.points_.size();
    for (std::size_t i = 0; i < count && nearest > touching; ++i) {
        if (square_between(box, solid.edge_boxes_[i]) > nearest * nearest) continue;
        const b2Vec2 edge[] = {single(solid.points_[i]), single(solid.points_[(i + 1) % count])};
        const b2DistanceOutput d = between(corners.at, corners.count, edge, 2);
        if (d.distance > nearest) continue;
        nearest = static_cast<double>(d.distance);
        least = {nearest, twice(d.pointA) + position, twice(d.pointB) + position};
    }
    // no edge is touched: all of the piece lies outside, or inside
    const bool crosses = nearest <= touching && least.distance < 1e300;
    const Vec2 corner = piece.corners[0] - position;
    const bool inside = !crosses && square_between(Box{corner, corner}, solid.outline_.box()) == 0.0 &&
                        tool::nearest(solid.outline_, corner).distance < 0.0;
    if (!crosses && !inside) return least.distance <= within ? least : Gap{};
    Corners own = piece.corners;
    for (Vec2& c : own) c -= position;
    Gap overlap = deepest(solid, own);
    overlap.on_strip += position, overlap.on_solid += position;
    return overlap;
}

double apart(const Convex& a, const Convex& b) {
    const Vec2 shift = a.corners[0];
    const Corners2 one = singles(a.corners, shift), other = singles(b.corners, shift);
    const double distance = static_cast<double>(between(one.at, one.count, other.at, other.count).distance);
    return distance > touching ? distance : 0.0;
}

}  // namespace overbend::clearance
