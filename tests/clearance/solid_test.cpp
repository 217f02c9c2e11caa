// Distance and overlap of random pieces and tools against a brute force over the same polygons in double
// precision: every side against every side, and every corner inside or outside by counting crossings.
//
// Allowed 1e-4 mm, of which single precision takes some 1e-5.

#include "sim/clearance/solid.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "sim/tool/block.h"
#include "sim/tool/die.h"
#include "sim/tool/punch.h"
#include "sim/tool/signed_distance.h"
#include "sim/units.h"
#include "tests/sweep/numbers.h"

using namespace overbend;
using clearance::Convex;
using clearance::Solid;
using tests::Numbers;
using tool::Vec2;

namespace {

double cross(const Vec2& a, const Vec2& b) {
    return a.x() * b.y() - a.y() * b.x();
}

double to_side(const Vec2& p, const Vec2& a, const Vec2& b) {
    const Vec2 side = b - a;
    const double share = std::clamp((p - a).dot(side) / side.squaredNorm(), 0.0, 1.0);
    return (p - a - share * side).norm();
}

bool sides_cross(const Vec2& a, const Vec2& b, const Vec2& c, const Vec2& d) {
    return cross(b - a, c - a) * cross(b - a, d - a) < 0.0 && cross(d - c, a - c) * cross(d - c, b - c) < 0.0;
}

bool is_inside(const std::vector<Vec2>& polygon, const Vec2& p) {
    bool inside = false;
    for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
        const Vec2 &a = polygon[i], &b = polygon[j];
        if ((a.y() > p.y()) != (b.y() > p.y()) &&
            p.x() < (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y()) + a.x())
            inside = !inside;
    }
    return inside;
}

// < 0 for an overlap, whose depth it does not tell.
double brute_distance(const std::vector<Vec2>& solid, const std::vector<Vec2>& piece) {
    double least = 1e300;
    for (std::size_t i = 0, j = solid.size() - 1; i < solid.size(); j = i++)
        for (std::size_t k = 0, l = piece.size() - 1; k < piece.size(); l = k++) {
            if (sides_cross(solid[j], solid[i], piece[l], piece[k])) return -1.0;
            least = std::min(
                {least, to_side(solid[i], piece[l], piece[k]), to_side(piece[k], solid[j], solid[i])});
        }
    return is_inside(solid, piece[0]) || is_inside(piece, solid[0]) ? -1.0 : least;
}

std::vector<tool::ArcOutline> tools() {
    const tool::VeeDie two_way{{{84.0 * degree, 10.0, 1.0, 0.4}, {56.0 * degree, 9.0, 1.0, 0.4}}, 30.0, 50.0};
    return {
        tool::make_outline(tool::VeePunch{50.0 * degree, 1.2, 60.0, 12.0}),
        tool::make_outline(two_way, 1),
        tool::make_outline(two_way, 2),
        tool::make_outline(tool::OffsetPunch{4.0, 50.0 * degree, 1.2, 0.5, 1.05, 15.0, 50.0}),
        tool::make_outline(tool::OffsetDie{4.0, 50.0 * degree, 1.2, 0.5, 15.0, 40.0}),
        tool::make_outline(tool::ChannelPunch{18.0, 1.5, 2.0 * degree, 11.0, 7.0, tool::Shank::right, 60.0}),
        tool::make_outline(tool::ChannelDie{21.0, 2.0, 22.0, 0.0, 51.0, 42.0}),
        tool::block_facing_down({30.0, 2.0, 2.0, 40.0})};
}

const Vec2& any_of(const std::vector<Vec2>& points, Numbers& draw) {
    const double last = static_cast<double>(points.size()) - 0.01;
    return points[static_cast<std::size_t>(draw.between(0.0, last))];
}

Convex random_piece(Numbers& draw, const Vec2& near) {
    const double turn = draw.between(0.0, 6.3), length = draw.log_between(0.3, 60.0),
                 half = draw.between(0.1, 1.5);
    const Vec2 along(std::cos(turn), std::sin(turn)), across(-along.y(), along.x());
    const Vec2 middle = near + Vec2(draw.between(-12.0, 12.0), draw.between(-12.0, 12.0));
    const double narrower = draw.between(0.3, 1.0);  // a trapezium, as pieces of a bend are
    Convex piece;
    piece.corners = {middle - 0.5 * length * along - half * across,
                     middle + 0.5 * length * along - half * across,
                     middle + 0.5 * narrower * length * along + half * across,
                     middle - 0.5 * narrower * length * along + half * across};
    return piece;
}

std::vector<Vec2> listed(const Convex& piece, const Vec2& shift) {
    std::vector<Vec2> all;
    for (const Vec2& c : piece.corners) all.push_back(c - shift);
    return all;
}

}  // namespace

TEST_CASE("distances of random pieces are those of a brute force") {
    int apart = 0, overlapping = 0, far = 0;
    Numbers draw(7);
    for (const tool::ArcOutline& outline : tools()) {
        const Solid solid(outline);
        for (int n = 0; n < 400; ++n) {
            CAPTURE(n);
            const Vec2 position(draw.between(-20.0, 20.0), draw.between(-80.0, 80.0));
            const auto& points = solid.points();
            const Vec2 near = any_of(points, draw);
            const Convex piece = random_piece(draw, near + position);
            const double within = draw.between(0.5, 20.0);
            const double expected = brute_distance(points, listed(piece, position));
            const clearance::Gap found = clearance::gap(solid, position, piece, within);
            if (std::abs(expected) < 1e-4) continue;  // touching: either is right
            if (expected < 0.0) {
                CHECK(found.distance <= 0.0);
                ++overlapping;
            } else if (expected > within + 1e-4) {
                CHECK(found.distance == 1e300);
                ++far;
            } else if (expected < within - 1e-4) {
                CHECK(found.distance == doctest::Approx(expected).epsilon(1e-5).scale(10.0));
                CHECK((found.on_strip - found.on_solid).norm() == doctest::Approx(expected).epsilon(1e-4));
                ++apart;
            }
        }
    }
    CHECK(apart > 500);
    CHECK(overlapping > 500);
    CHECK(far > 100);
}

TEST_CASE("the depth of an overlap is how far its deepest place is inside") {
    Numbers draw(11);
    int looked_at = 0;
    for (const tool::ArcOutline& outline : tools()) {
        const Solid solid(outline);
        for (int n = 0; n < 120; ++n) {
            const Vec2 near = any_of(solid.points(), draw);
            const Convex piece = random_piece(draw, near);
            const clearance::Gap found = clearance::gap(solid, Vec2::Zero(), piece, 1.0);
            if (found.distance > -0.05) continue;
            // of the piece's sides, by the exact distance, and of the solid's points in the piece
            double depth = 0.0;
            const std::vector<Vec2> corners = listed(piece, Vec2::Zero());
            for (std::size_t i = 0, j = corners.size() - 1; i < corners.size(); j = i++)
                for (int k = 0; k < 3000; ++k)
                    depth = std::max(
                        depth, -tool::nearest(outline, corners[j] + (corners[i] - corners[j]) * k / 3000.0)
                                    .distance);
            for (const Vec2& p : solid.points()) {
                if (!is_inside(corners, p)) continue;
                double own = 1e300;
                for (std::size_t i = 0, j = corners.size() - 1; i < corners.size(); j = i++)
                    own = std::min(own, to_side(p, corners[j], corners[i]));
                depth = std::max(depth, own);
            }
            // places 0.2 mm apart may miss the deepest by half of that
            CHECK(-found.distance <= depth + 0.02);
            CHECK(-found.distance >= depth - 0.11);
            ++looked_at;
        }
    }
    CHECK(looked_at > 200);
}

TEST_CASE("pieces of the strip: apart, or touching") {
    Convex a, b;
    a.corners = {Vec2(0.0, 0.0), Vec2(10.0, 0.0), Vec2(10.0, 1.0), Vec2(0.0, 1.0)};
    b.corners = {Vec2(12.0, 3.0), Vec2(20.0, 3.0), Vec2(20.0, 4.0), Vec2(12.0, 4.0)};
    CHECK(clearance::apart(a, b) == doctest::Approx(std::hypot(2.0, 2.0)));
    for (Vec2& c : b.corners) c += Vec2(-5.0, -2.5);
    CHECK(clearance::apart(a, b) == 0.0);
}
