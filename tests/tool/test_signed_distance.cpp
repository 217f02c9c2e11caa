// The signed distance to outlines of lines and arcs.
//
// Referee  the outline as a polygon of chords no further than 1e-7 mm from it: every side looked at, the sign
//          from the winding number. Normal and curvature against central differences of the distance.
// Random   outlines and points from a fixed seed; points within a box half as large again as the outline.

#include "sim/tool/signed_distance.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <random>
#include <vector>

#include "sim/units.h"
#include "tests/tool/outline_checks.h"

using namespace overbend::tool;
using namespace overbend::tests;
using overbend::degree;

namespace {

constexpr int outlines = 60;
constexpr int points_each = 40;

// Calls check(outline, points) for each random outline.
template <typename Check>
void over_outlines(unsigned seed, const Check& check) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> share(-0.75, 0.75);
    int drawn = 0;
    while (drawn < outlines) {
        std::optional<ArcOutline> outline;
        try {
            outline = random_outline(random);
        } catch (const overbend::OutOfRange&) {
            continue;
        }
        ++drawn;
        CAPTURE(drawn);
        const Box& box = outline->box();
        std::vector<Vec2> points;
        for (int i = 0; i < points_each; ++i) {
            const double x = share(random);
            const double y = share(random);
            points.push_back(0.5 * (box.low + box.high) + Vec2(x, y).cwiseProduct(box.high - box.low));
        }
        check(*outline, points);
    }
}

// Calls check(outline, point) for each of their points.
template <typename Check>
void over_random(unsigned seed, const Check& check) {
    over_outlines(seed, [&](const ArcOutline& outline, const std::vector<Vec2>& points) {
        for (const Vec2& point : points) check(outline, point);
    });
}

// Whether two results have the same kind of foot: on the same piece, both within it or both at one end.
bool same_feature(const ArcOutline& outline, const Nearest& a, const Nearest& b) {
    if (a.piece != b.piece) return false;
    const Piece& piece = outline.pieces()[a.piece];
    return (a.foot == piece.start) == (b.foot == piece.start) &&
           (a.foot == piece.end) == (b.foot == piece.end);
}

// Results right, left, above and below a point, or nothing where one of them has another kind of foot: there
// the distance or its derivatives have a kink.
std::optional<std::vector<Nearest>> cross_of(const ArcOutline& outline, const Vec2& point, double step) {
    const Nearest here = nearest(outline, point);
    std::vector<Nearest> around;
    for (const Vec2& side : {Vec2(1, 0), Vec2(-1, 0), Vec2(0, 1), Vec2(0, -1)}) {
        around.push_back(nearest(outline, point + step * side));
        if (!same_feature(outline, here, around.back())) return std::nullopt;
    }
    return around;
}

bool is_plain(const Nearest& found) {
    return std::isfinite(found.distance) && std::isfinite(found.curvature) && found.foot.allFinite() &&
           std::abs(found.normal.norm() - 1.0) < 1e-12;
}

ArcOutline square_with_notch() {
    // convex corners, a concave corner at the notch's bottom (0, 1), a concave arc and a convex one
    return from_points({{{-4, 0}, 1.0, 0.0},
                        {{4, 0}, 0.0, 0.0},
                        {{4, 3}, 0.0, 0.0},
                        {{1, 3}, 0.0, 0.0},
                        {{0, 1}, 0.0, 0.0},
                        {{-1, 3}, 0.0, -0.5},
                        {{-3, 3}, 0.0, 0.0},
                        {{-4, 3}, 0.0, 0.0}});
}

}  // namespace

TEST_SUITE("tool") {
    TEST_CASE("the distance is that of the referee, and the foot lies on the outline") {
        int inside = 0;
        over_outlines(1, [&](const ArcOutline& outline, const std::vector<Vec2>& points) {
            const std::vector<Vec2> polygon = sample(outline, 1e-7);
            for (const Vec2& point : points) {
                const Nearest found = nearest(outline, point);
                REQUIRE(is_plain(found));
                CHECK(std::abs(found.distance - polygon_distance(polygon, point)) < 2e-7);
                CHECK(std::abs(polygon_distance(polygon, found.foot)) < 2e-7);
                CHECK((found.foot + found.distance * found.normal - point).norm() < 1e-9);
                if (found.distance < 0.0) ++inside;
            }
        });
        CHECK(inside > outlines * points_each / 10);
        CHECK(inside < outlines * points_each * 9 / 10);
    }

    TEST_CASE("arcs of more than half a turn have the distance of the referee") {
        // a lobe of 300 deg on a block, and a hole of 300 deg that opens through its top
        const double bulge = std::tan(75.0 * degree);
        for (const double sense : {1.0, -1.0}) {
            CAPTURE(sense);
            const ArcOutline outline = from_points({{{-6, -6}, 0.0, 0.0},
                                                    {{6, -6}, 0.0, 0.0},
                                                    {{6, 3}, 0.0, 0.0},
                                                    {{1, 3}, 0.0, sense * bulge},
                                                    {{-1, 3}, 0.0, 0.0},
                                                    {{-6, 3}, 0.0, 0.0}});
            check_sound(outline);
            const std::vector<Vec2> polygon = sample(outline, 1e-7);
            for (double x = -7.05; x < 7.0; x += 0.5) {
                for (double y = -7.05; y < 9.0; y += 0.5) {
                    const Nearest found = nearest(outline, {x, y});
                    CHECK(std::abs(found.distance - polygon_distance(polygon, {x, y})) < 2e-7);
                }
            }
        }
    }

    // Away from tips and centres (curvature below 20 per mm) a step of 1e-5 mm leaves step^2 curvature^2 / 6.
    // Allowed 1e-8; measured 6e-9.
    TEST_CASE("the normal is the gradient of the distance") {
        const double step = 1e-5;
        int checked = 0;
        over_random(2, [&](const ArcOutline& outline, const Vec2& point) {
            const Nearest here = nearest(outline, point);
            const auto around = cross_of(outline, point, step);
            if (!around || std::abs(here.curvature) > 20.0) return;
            ++checked;
            const Vec2 gradient = Vec2((*around)[0].distance - (*around)[1].distance,
                                       (*around)[2].distance - (*around)[3].distance) /
                                  (2.0 * step);
            CHECK((gradient - here.normal).norm() < 1e-8);
        });
        CHECK(checked > outlines * points_each * 9 / 10);
    }

    // Allowed 1e-8; measured 3e-9.
    TEST_CASE("curvature (I - normal normal^T) is the hessian of the distance") {
        const double step = 1e-5;
        int checked = 0;
        int curved[2] = {0, 0};
        over_random(3, [&](const ArcOutline& outline, const Vec2& point) {
            const Nearest here = nearest(outline, point);
            const auto around = cross_of(outline, point, step);
            if (!around || std::abs(here.curvature) > 20.0) return;
            ++checked;
            if (here.curvature != 0.0) ++curved[here.curvature > 0.0 ? 0 : 1];
            Eigen::Matrix2d hessian;
            hessian.col(0) = ((*around)[0].normal - (*around)[1].normal) / (2.0 * step);
            hessian.col(1) = ((*around)[2].normal - (*around)[3].normal) / (2.0 * step);
            const Eigen::Matrix2d expected =
                here.curvature * (Eigen::Matrix2d::Identity() - here.normal * here.normal.transpose());
            CHECK((hessian - expected).norm() < 1e-8);
        });
        CHECK(checked > outlines * points_each * 9 / 10);
        CHECK(curved[0] > 100);
        CHECK(curved[1] > 100);
    }

    TEST_CASE("over the pieces within reach it is the same as over all") {
        std::vector<int> subset;
        int smaller = 0;
        over_random(4, [&](const ArcOutline& outline, const Vec2& point) {
            const Nearest all = nearest(outline, point);
            pieces_within(outline, point, std::abs(all.distance) + 0.2, subset);
            REQUIRE_FALSE(subset.empty());
            if (subset.size() < outline.pieces().size()) ++smaller;
            const Nearest some = nearest(outline, subset, point);
            CHECK(some.distance == all.distance);
            CHECK(some.normal == all.normal);
            CHECK(some.curvature == all.curvature);
            CHECK(some.piece == all.piece);
            CHECK(some.foot == all.foot);
        });
        CHECK(smaller > outlines * points_each / 2);
    }

    TEST_CASE("one piece alone gives what its nearest point is, with the sign if it is the nearest") {
        over_random(5, [&](const ArcOutline& outline, const Vec2& point) {
            const Nearest all = nearest(outline, point);
            const Nearest one = nearest(outline, std::vector<int>{all.piece}, point);
            CHECK(one.distance == all.distance);
            CHECK(one.normal == all.normal);
        });
    }

    TEST_CASE("the pieces within reach are those that, taken one by one, come that near") {
        std::vector<int> found;
        over_random(6, [&](const ArcOutline& outline, const Vec2& point) {
            const double reach = 1.5;
            pieces_within(outline, point, reach, found);
            for (int i = 0; i < static_cast<int>(outline.pieces().size()); ++i) {
                const Nearest one = nearest(outline, std::vector<int>{i}, point);
                const bool listed = std::find(found.begin(), found.end(), i) != found.end();
                CHECK(listed == (std::abs(one.distance) <= reach));
            }
            CHECK(std::is_sorted(found.begin(), found.end()));
        });
    }

    TEST_CASE("a far reach finds every piece, and none is found where none is near") {
        const ArcOutline outline = square_with_notch();
        std::vector<int> found = {7, 8};
        pieces_within(outline, {0, 0}, 100.0, found);
        CHECK(found.size() == outline.pieces().size());
        pieces_within(outline, {100, 0}, 1.0, found);
        CHECK(found.empty());
    }

    TEST_CASE("on the outline, at its joints and at the arcs' centres nothing is NaN") {
        over_random(7, [](const ArcOutline& outline, const Vec2&) {
            for (std::size_t i = 0; i < outline.pieces().size(); ++i) {
                const Piece& piece = outline.pieces()[i];
                const Nearest joint = nearest(outline, piece.start);
                REQUIRE(is_plain(joint));
                CHECK(std::abs(joint.distance) < 1e-12);
                CHECK(std::abs(joint.curvature) <= 1.0 / 1e-9);

                const Vec2 middle = piece.is_arc() ? Vec2(piece.centre + piece.radius * piece.direction)
                                                   : Vec2(0.5 * (piece.start + piece.end));
                const Nearest on = nearest(outline, middle);
                REQUIRE(is_plain(on));
                CHECK(std::abs(on.distance) < 1e-12);
                if (!piece.is_arc()) continue;

                const Nearest centre = nearest(outline, std::vector<int>{static_cast<int>(i)}, piece.centre);
                REQUIRE(is_plain(centre));
                CHECK(std::abs(centre.distance) == doctest::Approx(piece.radius));
                const double sense = piece.sweep > 0.0 ? 1.0 : -1.0;
                CHECK((centre.normal - sense * piece.direction).norm() < 1e-12);
                CHECK(centre.curvature == doctest::Approx(sense * 1e9));
                REQUIRE(is_plain(nearest(outline, piece.centre)));
            }
        });
    }

    TEST_CASE("at a sharp corner the normal is the bisector, and the sign follows it") {
        const ArcOutline outline = square_with_notch();
        const Nearest tip = nearest(outline, {4, 0});
        CHECK((tip.normal - Vec2(1, -1).normalized()).norm() < 1e-12);
        const Nearest out = nearest(outline, {4.3, -0.4});
        CHECK(out.distance == doctest::Approx(0.5));
        CHECK(out.curvature == doctest::Approx(2.0));
        CHECK((out.normal - Vec2(0.6, -0.8)).norm() < 1e-12);

        // below the notch's bottom the corner itself is the nearest point, from inside
        const Nearest below = nearest(outline, {0.05, 0.75});
        CHECK((below.foot - Vec2(0, 1)).norm() < 1e-12);
        CHECK(below.distance == doctest::Approx(-std::hypot(0.05, 0.25)));
        CHECK(below.curvature == doctest::Approx(-1.0 / std::hypot(0.05, 0.25)));
        CHECK(below.normal.y() > 0.9);
        CHECK((nearest(outline, {0, 1}).normal - Vec2(0, 1)).norm() < 1e-12);
    }

    TEST_CASE("signs of curvature: line, convex arc, concave arc") {
        const ArcOutline outline = square_with_notch();
        CHECK(nearest(outline, {0, -1}).curvature == 0.0);
        const Nearest convex = nearest(outline, {-4, 0});  // the rounded corner, centre (-3, 1), radius 1
        CHECK(convex.distance == doctest::Approx(std::sqrt(2.0) - 1.0));
        CHECK(convex.curvature == doctest::Approx(1.0 / std::sqrt(2.0)));
        const Nearest concave = nearest(outline, {-2, 3});  // over a hollow 0.5 deep, 2 wide: radius 1.25
        CHECK(concave.distance == doctest::Approx(0.5));
        CHECK(concave.curvature == doctest::Approx(-1.0 / 0.75));
        CHECK((concave.normal - Vec2(0, 1)).norm() < 1e-12);
    }

    TEST_CASE("the normal turns without a jump along a path past smooth joints") {
        const ArcOutline outline = round_corners({{{0, 0}, 1.0},
                                                  {{6, 0}, 1.0},
                                                  {{6, 4}, 0.5},
                                                  {{4, 4}, 0.5},
                                                  {{3, 2}, 0.7},
                                                  {{2, 4}, 0.5},
                                                  {{0, 4}, 1.0}});
        for (const double off : {-0.2, -1e-4, 0.0, 1e-4, 0.3}) {
            CAPTURE(off);
            const std::vector<Vec2> path = sample(outline, 1e-6);
            Vec2 last = nearest(outline, path.back()).normal;
            double largest = 0.0;
            for (std::size_t i = 0; i < path.size(); ++i) {
                const Vec2 normal = nearest(outline, path[i]).normal;
                const Vec2 beside = nearest(outline, path[i] + off * normal).normal;
                CHECK((beside - normal).norm() < 1e-9);
                largest = std::max(largest, (normal - last).norm());
                last = normal;
            }
            // a chord of sag 1e-6 mm on the smallest arc turns by sqrt(8 sag / r) = 4e-3
            CHECK(largest < 4.1e-3);
        }
    }

    TEST_CASE("a point within rounding of a smooth joint gives the joint's normal from either side") {
        const ArcOutline outline =
            round_corners({{{0, 0}, 1.0}, {{6, 0}, 1.0}, {{6, 4}, 0.5}, {{3, 2}, 1.0}, {{0, 4}, 0.5}});
        for (std::size_t i = 0; i < outline.pieces().size(); ++i) {
            const Joint& joint = outline.joints()[i];
            CHECK(joint.turn == Turn::smooth);
            for (const double aside : {-1e-9, -1e-13, -1e-16, 0.0, 1e-16, 1e-13, 1e-9}) {
                for (const double off : {-0.1, -1e-12, 0.0, 1e-12, 0.1}) {
                    const Vec2 along(-joint.normal.y(), joint.normal.x());
                    const Vec2 point = outline.pieces()[i].start + aside * along + off * joint.normal;
                    const Nearest found = nearest(outline, point);
                    CHECK((found.normal - joint.normal).norm() < 1e-8);
                    CHECK(std::abs(found.distance - off) < 1e-12);
                    const Piece& piece = outline.pieces()[found.piece];
                    if (piece.is_arc()) CHECK(found.curvature * piece.sweep > 0.0);
                    if (!piece.is_arc()) CHECK(found.curvature == 0.0);
                }
            }
        }
    }
}
