// Outlines: what is kept of the pieces given, and what is refused.

#include "sim/tool/arc_outline.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "sim/units.h"
#include "tests/tool/outline_checks.h"

using namespace overbend::tool;
using namespace overbend::tests;
using overbend::degree;

namespace {

Piece line(const Vec2& start, const Vec2& end) {
    Piece piece;
    piece.start = start;
    piece.end = end;
    return piece;
}

Piece arc(const Vec2& start, const Vec2& end, const Vec2& centre, double sweep) {
    Piece piece = line(start, end);
    piece.centre = centre;
    piece.radius = (start - centre).norm();
    piece.sweep = sweep;
    return piece;
}

// A half disc of radius 2 on the line y = 0, counter-clockwise.
std::vector<Piece> half_disc() {
    return {line({-2, 0}, {2, 0}), arc({2, 0}, {-2, 0}, {0, 0}, 180.0 * degree)};
}

std::vector<Piece> closed(const std::vector<Vec2>& points) {
    std::vector<Piece> pieces;
    for (std::size_t i = 0; i < points.size(); ++i) {
        pieces.push_back(line(points[i], points[(i + 1) % points.size()]));
    }
    return pieces;
}

std::string refused(std::vector<Piece> pieces) {
    return refusal([&] { ArcOutline outline(std::move(pieces)); }).what();
}

}  // namespace

TEST_SUITE("tool") {
    TEST_CASE("area and box of a half disc are those of the geometry") {
        const ArcOutline outline(half_disc());
        check_sound(outline);
        CHECK(outline.area() == doctest::Approx(2.0 * 180.0 * degree));
        CHECK((outline.box().low - Vec2(-2, 0)).norm() < 1e-12);
        CHECK((outline.box().high - Vec2(2, 2)).norm() < 1e-12);
    }

    TEST_CASE("pieces given clockwise are turned round") {
        const ArcOutline outline({arc({-2, 0}, {2, 0}, {0, 0}, -180.0 * degree), line({2, 0}, {-2, 0})});
        check_sound(outline);
        CHECK(outline.area() == doctest::Approx(2.0 * 180.0 * degree));
        CHECK(arcs_of(outline, 2.0).front().sweep == doctest::Approx(180.0 * degree));
    }

    TEST_CASE("pieces of no length are left out") {
        std::vector<Piece> pieces = closed({{0, 0}, {3, 0}, {3, 2}});
        pieces.insert(pieces.begin() + 1, line({3, 0}, {3, 0}));
        const ArcOutline outline(pieces);
        CHECK(outline.pieces().size() == 3);
        check_sound(outline);
    }

    TEST_CASE("joints are told apart") {
        const ArcOutline outline = from_points({{{0, 0}, 0.0, 0.0},
                                                {{4, 0}, 1.0, 0.0},
                                                {{4, 4}, 0.0, 0.0},
                                                {{2, 2}, 0.0, 0.0},
                                                {{0, 4}, 0.0, 0.0}});
        int count[3] = {0, 0, 0};
        for (const Joint& joint : outline.joints()) ++count[static_cast<int>(joint.turn)];
        CHECK(count[static_cast<int>(Turn::smooth)] == 2);
        CHECK(count[static_cast<int>(Turn::convex)] == 3);
        CHECK(count[static_cast<int>(Turn::concave)] == 1);
    }

    TEST_CASE("moved, mirrored and turned outlines have the geometry moved, mirrored and turned") {
        const ArcOutline outline =
            round_corners({{{0, 0}, 0.5}, {{5, 0}, 1.0}, {{4, 3}, 0.0}, {{2, 1}, 0.4}});
        const std::vector<Vec2> polygon = sample(outline, 1e-6);
        const ArcOutline by = shifted(outline, {3, -2});
        const ArcOutline mirror = mirrored(outline);
        const ArcOutline turned = half_turned(outline);
        for (const ArcOutline* moved : {&by, &mirror, &turned}) {
            check_sound(*moved);
            CHECK(moved->area() == doctest::Approx(outline.area()));
            CHECK(moved->pieces().size() == outline.pieces().size());
        }
        for (const Vec2& point : polygon) {
            CHECK(std::abs(polygon_distance(sample(by, 1e-6), point + Vec2(3, -2))) < 2e-6);
            CHECK(std::abs(polygon_distance(sample(mirror, 1e-6), Vec2(-point.x(), point.y()))) < 2e-6);
            CHECK(std::abs(polygon_distance(sample(turned, 1e-6), -point)) < 2e-6);
        }
    }

    TEST_CASE("sampled chords stay within the sag") {
        const ArcOutline outline(half_disc());
        for (const double sag : {10.0, 0.5, 0.01, 1e-4}) {
            CAPTURE(sag);
            const std::vector<Vec2> points = sample(outline, sag);
            double furthest = 0.0;
            for (std::size_t i = 1; i < points.size(); ++i) {
                CHECK((points[i] - points[i - 1]).norm() > 1e-9);
                const Vec2 middle = 0.5 * (points[i] + points[i - 1]);
                if (middle.y() > 1e-9) furthest = std::max(furthest, 2.0 - middle.norm());
            }
            CHECK(furthest <= sag * (1.0 + 1e-9));
            if (sag < 0.1) CHECK(furthest > 0.5 * sag);
        }
        CHECK(says(refusal([&] { sample(outline, 0.0); }).what(), "sag"));
    }

    TEST_CASE("outlines that cannot be are refused") {
        CHECK(says(refused({}), "at least two"));
        CHECK(says(refused({line({0, 0}, {0, 0})}), "at least two"));
        CHECK(says(refused({line({0, 0}, {1, 0}), line({1, 0}, {1, 1}), line({1, 1}, {0, 0.5})}),
                   "open by 0.5 mm"));
        CHECK(says(refused(closed({{0, 0}, {4, 0}, {1, 3}, {3, 3}})), "crosses or touches itself at (2, 2)"));
        CHECK(says(refused(closed({{0, 0}, {4, 0}, {4, 4}, {2, 0}, {0, 4}})), "touches itself at (2, 0)"));
        CHECK(says(refused(closed({{0, 0}, {4, 0}, {2, 0}, {2, 3}})), "doubles back at (4, 0)"));
        CHECK(says(refused(closed({{0, 0}, {1, 0}})), "doubles back"));
        CHECK(
            says(refused(closed({{0, 0}, {std::numeric_limits<double>::quiet_NaN(), 0}, {2, 3}})), "finite"));

        std::vector<Piece> loose = half_disc();
        loose[1].centre = Vec2(0, 0.1);
        CHECK(says(refused(loose), "misses its end points"));
        loose = half_disc();
        loose[1].sweep = 170.0 * degree;
        CHECK(says(refused(loose), "misses its end points"));
        loose = half_disc();
        loose[1].sweep = 0.0;
        CHECK(says(refused(loose), "turns through 0 deg"));
        loose = half_disc();
        loose[1].radius = -2.0;
        CHECK(says(refused(loose), "radius is -2 mm"));
    }

    TEST_CASE("a side that lies on another is found where its neighbours are tangent to it") {
        // a pocket rounded down on to the base, which is 5e-11 mm below it: no side crosses another
        const double hollow = -std::tan(22.5 * degree);
        std::vector<PathPoint> points = {
            {{0, -5e-11}, 0.0, 0.0}, {{10, -5e-11}, 0.0, 0.0}, {{10, 4}, 0.0, 0.0},   {{8, 4}, 0.0, 0.0},
            {{8, 1}, 0.0, hollow},   {{7, 0}, 0.0, 0.0},       {{3, 0}, 0.0, hollow}, {{2, 1}, 0.0, 0.0},
            {{2, 4}, 0.0, 0.0},      {{0, 4}, 0.0, 0.0}};
        for (std::size_t first = 0; first < points.size(); ++first) {
            CAPTURE(first);
            CHECK(says(refusal([&] { from_points(points); }).what(), "touches"));
            std::rotate(points.begin(), points.begin() + 1, points.end());
        }
        for (PathPoint& point : points) point.at.y() -= point.at.y() < 0.0 ? 0.01 : 0.0;
        check_sound(from_points(points));
    }

    TEST_CASE("arcs that cross sides are found") {
        // a bulge outwards is sound, inwards it runs through the opposite side
        const auto bulged = [](double bulge) {
            return from_points(
                {{{0, 0}, 0.0, bulge}, {{4, 0}, 0.0, 0.0}, {{4, 1}, 0.0, 0.0}, {{0, 1}, 0.0, 0.0}});
        };
        check_sound(bulged(0.8));
        check_sound(bulged(-0.4));
        CHECK(says(refusal([&] { bulged(-0.6); }).what(), "crosses"));
        // two arcs that cross: bulges of 0.5 either side of a 1 mm gap
        const auto waist = [](double bulge) {
            return from_points(
                {{{0, 0}, 0.0, -bulge}, {{4, 0}, 0.0, 0.0}, {{4, 3}, 0.0, -bulge}, {{0, 3}, 0.0, 0.0}});
        };
        check_sound(waist(0.74));
        CHECK(says(refusal([&] { waist(0.76); }).what(), "crosses"));
        // a neighbour that comes back: an arc of 300 deg through the side that leads to it
        CHECK(says(refusal([] {
                       from_points(
                           {{{0, 0}, 0.0, 0.0}, {{4, 0}, 0.0, -std::tan(75.0 * degree)}, {{4, 1}, 0.0, 0.0}});
                   }).what(),
                   "crosses"));
        // sides that lie on each other
        CHECK(says(refused(closed({{0, 0}, {6, 0}, {6, 2}, {4, 2}, {4, 0}, {2, 0}, {2, 2}, {0, 2}})),
                   "touches"));
    }
}
