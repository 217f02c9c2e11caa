// How strip and punch move by geometry: touching is checked here from the definition of touching.

#include "sim/plan/stroke_path.h"

#include <doctest/doctest.h>

#include <cmath>

#include "sim/units.h"

using namespace overbend::plan;
using Eigen::Vector2d;
using overbend::degree;

namespace {

StrokePath vee() {
    StrokePath p;
    p.kind = StrokeKind::vee;
    p.thickness = 1.0;
    p.loaded = 93.0 * degree, p.free = 90.0 * degree;
    p.half_allowance = 1.5;
    p.nose = 1.2, p.shoulder = 1.0, p.shoulder_x = 5.0;
    return p;
}

// Distance of a point from the line in which a side begins.
double across(const Frame& f, const Vector2d& point) {
    return std::abs((point - f.at).dot(f.across()));
}

}  // namespace

TEST_CASE("a V stroke begins flat, and ends at its angle") {
    const StrokePath p = vee();
    const PathPoint start = at(p, 0.0), end = at(p, 1.0);
    CHECK(start.ram == doctest::Approx(1.0));  // the nose on a strip as thick as that
    CHECK(start.right.turn() == 0.0);
    CHECK(start.right.at.y() == doctest::Approx(0.5));
    CHECK(start.right.at.x() == doctest::Approx(1.5));
    CHECK(end.right.turn() + end.left.turn() == doctest::Approx(p.loaded));
    CHECK(at(p, free_at(p)).right.turn() == doctest::Approx(0.5 * p.free));
    CHECK(end.ram < start.ram);
}

TEST_CASE("the strip lies on the shoulder and against the nose all the way") {
    for (const StrokeKind kind : {StrokeKind::vee, StrokeKind::channel}) {
        StrokePath p = vee();
        p.kind = kind;
        if (kind == StrokeKind::channel) p.nose_x = 7.0, p.shoulder_x = 10.8, p.loaded = 85.0 * degree;
        for (int i = 0; i <= 20; ++i) {
            const PathPoint point = at(p, i / 20.0);
            CAPTURE(i);
            CHECK(across(point.right, {p.shoulder_x, -p.shoulder}) == doctest::Approx(p.shoulder + 0.5));
            CHECK(across(point.right, {p.nose_x, point.ram + p.nose}) == doctest::Approx(p.nose + 0.5));
        }
    }
}

TEST_CASE("a wiped flange lies on the edge, and the punch's corner on the flange") {
    StrokePath p;
    p.kind = StrokeKind::wiping;
    p.thickness = 1.0, p.loaded = 80.0 * degree, p.free = 78.0 * degree, p.half_allowance = 2.0;
    p.shoulder = 2.0, p.nose = 3.0, p.clearance = 1.2;
    for (int i = 1; i <= 20; ++i) {
        const PathPoint point = at(p, i / 20.0);
        CHECK(across(point.right, {-2.0, -2.0}) == doctest::Approx(2.5));
        CHECK(across(point.right, {1.2 + 3.0, point.ram + 3.0}) == doctest::Approx(3.5));
        CHECK(point.right.turn() < 0.0);
    }
}

TEST_CASE("an offset's halves end a step apart, and keep level") {
    StrokePath p;
    p.kind = StrokeKind::offset;
    p.thickness = 1.0, p.loaded = 47.0 * degree, p.free = 45.0 * degree;
    p.offset = 4.0, p.run = 4.0, p.clearance = 1.0, p.nose = 1.0, p.shoulder = 1.0, p.middle = 8.0;
    const PathPoint start = at(p, 0.0), end = at(p, 1.0);
    CHECK(start.left.at.x() + start.right.at.x() == doctest::Approx(8.0));
    CHECK(end.right.at.y() - end.left.at.y() == doctest::Approx(4.0));
    CHECK(end.ram == doctest::Approx(-3.0));
    CHECK(start.ram == doctest::Approx(1.0));
}

TEST_CASE("nothing moves faster than the bounds say") {
    const StrokePath p = vee();
    const PathSpeed bound = fastest(p);
    const int instants = 2000;
    for (int i = 0; i < instants; ++i) {
        const PathPoint a = at(p, static_cast<double>(i) / instants), b = at(p, (i + 1.0) / instants);
        CHECK((b.right.at - a.right.at).norm() * instants <= bound.shift);
        CHECK(std::abs(b.right.turn() - a.right.turn()) * instants <= bound.turn);
        CHECK(std::abs(b.ram - a.ram) * instants <= bound.ram);
    }
}

TEST_CASE("the straight that is needed reaches the shoulders") {
    const StrokePath p = vee();
    // flat: from the bend's end to the shoulder arc's centre; bent: longer
    CHECK(needed_straight(p) >= 5.0 - 1.5);
    CHECK(needed_straight(p) < 6.0);
}
