// The strip's way from one stroke to the next: found from the shapes, ending exactly at its place.

#include "render/film/carry.h"

#include <doctest/doctest.h>

#include <Eigen/LU>
#include <algorithm>
#include <cmath>

#include "sim/units.h"
#include "tests/picture/synthetic_recording.h"

using namespace overbend;
using namespace overbend::film;
using namespace overbend::picture;

namespace {

Eigen::Matrix2d turn_matrix(double angle) {
    Eigen::Matrix2d m;
    m << std::cos(angle), -std::sin(angle), std::sin(angle), std::cos(angle);
    return m;
}

// A recording of one state: the strip as the given one leaves it, mirrored and turned.
stroke::Recording moved(const stroke::Recording& from, double mirror_x, double mirror_y, double angle) {
    stroke::Recording r = from;
    stroke::State s = from.states.back();
    Eigen::Matrix2d mirror = Eigen::Matrix2d::Identity();
    mirror(0, 0) = mirror_x;
    mirror(1, 1) = mirror_y;
    const Eigen::Matrix2d m = turn_matrix(angle) * mirror;
    for (size_t i = 0; i < s.x.size(); ++i) {
        const Place p = m * Place(s.x[i], s.y[i]) + Place(3.0, 7.0);
        s.x[i] = p.x();
        s.y[i] = p.y();
        s.theta[i] = mirror_x * mirror_y * s.theta[i] + angle;
    }
    if (mirror_x < 0.0) {
        std::reverse(s.x.begin(), s.x.end());
        std::reverse(s.y.begin(), s.y.end());
        std::reverse(s.theta.begin(), s.theta.end());
        std::reverse(r.blank_position.begin(), r.blank_position.end());
    }
    r.states = {s};
    return r;
}

// A strip whose two flanges differ, so that no turning looks like another.
stroke::Recording lopsided() {
    tests::SyntheticStroke stroke;
    stroke.bend_line = 12.0;
    return tests::synthetic_recording(stroke);
}

struct Way {
    double mirror_x, mirror_y;
    Turning turning;
};

}  // namespace

TEST_CASE("every way of turning is found and ends at the strip's next place") {
    const stroke::Recording before = lopsided();
    for (const Way& way : {Way{1, 1, Turning::none}, Way{-1, 1, Turning::end_for_end},
                           Way{1, -1, Turning::over}, Way{-1, -1, Turning::both}})
        for (const double angle : {0.0, 0.8, -0.7}) {
            const stroke::Recording after = moved(before, way.mirror_x, way.mirror_y, angle);
            const Carry carry = find_carry(before, after);
            CAPTURE(way.mirror_x);
            CAPTURE(way.mirror_y);
            CAPTURE(angle);
            CHECK(carry.turning == way.turning);
            const StripMotion start =
                motion_at(carry, {0.0, 0.0, 0.0}, {{0.0, 5.0}, 0.0}, {{-2.0, 3.0}, 0.2});
            const StripMotion end = motion_at(carry, {0.0, 1.0, 1.0}, {{0.0, 5.0}, 0.0}, {{-2.0, 3.0}, 0.2});
            for (const double s : {0.0, 9.0, 12.0, 30.0, 42.0}) {
                const Place p = spot_on(before, before.states.back(), s).at;
                const Place q = spot_on(after, after.states.front(), s).at;
                CHECK((start.turn * p + start.shift - p).norm() < 1e-9);
                CHECK((end.turn * p + end.shift - q).norm() < 1e-6);
            }
        }
}

TEST_CASE("a flat strip that is only moved is not said to be turned over") {
    stroke::Recording before = lopsided();
    before.states = {before.states.front()};
    CHECK(find_carry(before, before).turning == Turning::none);
    CHECK(find_carry(before, moved(before, -1, 1, 0.0)).turning == Turning::end_for_end);
}

TEST_CASE("the strip never jumps on its way") {
    const stroke::Recording before = lopsided();
    const Carry carry = find_carry(before, moved(before, -1, -1, 0.4));
    const Place end_of_strip = spot_on(before, before.states.back(), 42.0).at;
    Place last = end_of_strip;
    for (int i = 1; i <= 300; ++i) {
        // Off the die, turned and moved, loaded: a hundredth of each at a time.
        const Carried carried{i < 100   ? i / 100.0
                              : i < 200 ? 1.0
                                        : (300 - i) / 100.0,
                              std::min(1.0, std::max(0.0, i / 100.0 - 1.0)),
                              std::min(1.0, std::max(0.0, i / 100.0 - 1.0))};
        const StripMotion motion = motion_at(carry, carried, {{0.0, 5.0}, 0.0}, {{-4.0, -4.0}, 0.16});
        const Place now = motion.turn * end_of_strip + motion.shift;
        CHECK((now - last).norm() < 2.0);
        last = now;
    }
    CHECK(std::abs(carry.turn) <= pi);  // the shorter way round
}

TEST_CASE("a part held towards the viewer is larger, and has its own size on the die") {
    const stroke::Recording before = lopsided();
    const Carry carry = find_carry(before, moved(before, 1, 1, 0.0));
    const Hold near_us{{-4.0, -4.0}, 0.16};
    CHECK(motion_at(carry, {1.0, 0.0, 0.0}, near_us, {}).turn.determinant() == doctest::Approx(1.16 * 1.16));
    CHECK(motion_at(carry, {0.0, 0.0, 0.0}, near_us, {}).turn.determinant() == doctest::Approx(1.0));
    CHECK(motion_at(carry, {1.0, 1.0, 1.0}, near_us, {}).turn.determinant() == doctest::Approx(1.0));
}
