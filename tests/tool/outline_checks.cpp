#include "tests/tool/outline_checks.h"

#include <algorithm>
#include <cmath>

#include "sim/units.h"

namespace overbend::tests {

using tool::ArcOutline;
using tool::Piece;
using tool::Vec2;

namespace {

double cross(const Vec2& a, const Vec2& b) {
    return a.x() * b.y() - a.y() * b.x();
}

}  // namespace

double polygon_area(const std::vector<Vec2>& polygon) {
    double twice = 0.0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        twice += cross(polygon[i], polygon[(i + 1) % polygon.size()]);
    }
    return 0.5 * twice;
}

double polygon_distance(const std::vector<Vec2>& polygon, const Vec2& point) {
    double least = 1e300;
    int winding = 0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vec2& a = polygon[i];
        const Vec2& b = polygon[(i + 1) % polygon.size()];
        const Vec2 side = b - a;
        const double share = std::clamp(side.dot(point - a) / side.squaredNorm(), 0.0, 1.0);
        least = std::min(least, (point - a - share * side).norm());
        if (a.y() <= point.y() && b.y() > point.y() && cross(side, point - a) > 0.0) ++winding;
        if (a.y() > point.y() && b.y() <= point.y() && cross(side, point - a) < 0.0) --winding;
    }
    return winding == 0 ? least : -least;
}

void check_sound(const ArcOutline& outline) {
    const std::vector<Piece>& pieces = outline.pieces();
    REQUIRE(pieces.size() >= 2);
    REQUIRE(outline.joints().size() == pieces.size());
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        CHECK((pieces[i].end - pieces[(i + 1) % pieces.size()].start).norm() < 2e-9);
        CHECK(pieces[i].length >= 1e-9);
        if (!pieces[i].is_arc()) continue;
        CHECK(std::abs((pieces[i].start - pieces[i].centre).norm() - pieces[i].radius) < 1e-9);
        CHECK(std::abs((pieces[i].end - pieces[i].centre).norm() - pieces[i].radius) < 1e-9);
    }
    const std::vector<Vec2> polygon = sample(outline, 1e-7);
    CHECK(outline.area() > 0.0);
    CHECK(polygon_area(polygon) == doctest::Approx(outline.area()).epsilon(1e-6));
    Vec2 low = polygon.front();
    Vec2 high = polygon.front();
    for (const Vec2& point : polygon) {
        low = low.cwiseMin(point);
        high = high.cwiseMax(point);
    }
    CHECK((low - outline.box().low).norm() < 1e-6);
    CHECK((high - outline.box().high).norm() < 1e-6);
}

ArcOutline random_outline(std::mt19937& random) {
    std::uniform_real_distribution<double> share(0.0, 1.0);
    const int count = 3 + static_cast<int>(random() % 7);
    std::vector<tool::PathPoint> points(count);
    for (int i = 0; i < count; ++i) {
        const double angle = (i + 0.6 * share(random)) * 360.0 * degree / count;
        points[i].at = (2.0 + 8.0 * share(random)) * Vec2(std::cos(angle), std::sin(angle));
        if (random() % 4 == 0) points[i].bulge = 0.8 * share(random) - 0.4;
    }
    for (int i = 0; i < count; ++i) {
        const tool::PathPoint& before = points[(i + count - 1) % count];
        const tool::PathPoint& after = points[(i + 1) % count];
        if (before.bulge != 0.0 || points[i].bulge != 0.0 || random() % 4 == 0) continue;
        const Vec2 in = points[i].at - before.at;
        const Vec2 out = after.at - points[i].at;
        const double turn = std::atan2(cross(in, out), in.dot(out));
        const double trim = 0.5 * share(random) * std::min(in.norm(), out.norm());
        points[i].radius = trim / std::abs(std::tan(0.5 * turn));
    }
    if (random() % 2 == 0) {  // the same, walked the other way
        std::reverse(points.begin(), points.end());
        const double first = points.front().bulge;
        for (int i = 0; i + 1 < count; ++i) points[i].bulge = -points[i + 1].bulge;
        points.back().bulge = -first;
    }
    return from_points(points);
}

std::vector<Piece> arcs_of(const ArcOutline& outline, double radius) {
    std::vector<Piece> arcs;
    for (const Piece& piece : outline.pieces()) {
        if (std::abs(piece.radius - radius) < 1e-9) arcs.push_back(piece);
    }
    return arcs;
}

}  // namespace overbend::tests
