// Mirrored strokes give mirrored strips, and turning a strip round does not change it.
//
// Source  symmetry.
// Allowed 2e-4 mm of the free strip's points and 1e-3 degree of its angle: the equilibrium's tolerance and
//         the stop's, not the symmetry's. Measured: printed.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "sim/strip/place.h"
#include "sim/stroke/placing.h"
#include "sim/units.h"
#include "tests/stroke/strip_metals.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

void check_same(const strip::StripState& a, const strip::StripState& b) {
    CHECK(a.x == b.x);
    CHECK(a.y == b.y);
    CHECK(a.theta == b.theta);
    CHECK(a.blank_position == b.blank_position);
    CHECK(a.history == b.history);
    CHECK(a.face_down == b.face_down);
    CHECK(a.turned == b.turned);
}

double turn(const strip::StripState& s) {
    return std::abs(s.theta.back() - s.theta.front());
}

}  // namespace

TEST_SUITE("stroke") {
    TEST_CASE("a strip that lies off the middle to the right bends as one that lies off to the left") {
        job::VeeBend right = plain_bend(), left = plain_bend();
        right.off_centre = 0.4, left.off_centre = -0.4;
        const stroke::Stop stop = stop_at(stroke::StopKind::travel, 2.0);
        const job::VeeResult a = job::bend_vee(right, stop, {}), b = job::bend_vee(left, stop, {});
        const strip::StripState &p = a.stroke.free, &q = b.stroke.free;
        double worst = 0.0;
        REQUIRE(p.nodes() == q.nodes());
        for (int i = 0; i < p.nodes(); ++i) {
            const int j = p.nodes() - 1 - i;
            worst = std::max({worst, std::abs(p.x[i] + q.x[j]), std::abs(p.y[i] - q.y[j]),
                              std::abs(p.theta[i] + q.theta[j])});
        }
        std::printf("mirrored off the middle: points %.1e mm, angle %.1e deg, peak %.1e\n", worst,
                    (a.free - b.free) / degree, a.stroke.peak_force / b.stroke.peak_force - 1.0);
        CHECK(worst < 2e-4);
        CHECK(std::abs(a.free - b.free) < 1e-3 * degree);
        CHECK(std::abs(a.stroke.peak_force / b.stroke.peak_force - 1.0) < 1e-4);
    }

    TEST_CASE("turning a bent strip over or end for end twice leaves it as it was") {
        const job::VeeResult r = job::bend_vee(plain_bend(), stop_at(stroke::StopKind::travel, 2.0), {});
        const strip::StripState bent = r.stroke.free;
        strip::StripState s = bent;
        strip::turn_over(s);
        CHECK(s.face_down);
        CHECK(s.theta.back() - s.theta.front() == -(bent.theta.back() - bent.theta.front()));
        strip::turn_over(s);
        check_same(s, bent);
        strip::turn_end_for_end(s);
        CHECK(s.turned);
        CHECK(std::abs((s.theta.back() - s.theta.front()) - (bent.theta.back() - bent.theta.front())) <
              1e-14);
        strip::turn_end_for_end(s);
        check_same(s, bent);
    }

    TEST_CASE("a strip that was turned and shifted bends the same") {
        stroke::StrokeScene scene = job::vee_stroke(plain_bend()).scene;
        scene.stop.kind = stroke::StopKind::travel;
        scene.stop.value = 2.0;
        const double middle = 0.5 * (scene.stop.left + scene.stop.right);
        const stroke::StrokeResult plain = stroke::press(scene, {});

        // over: the upper face down; ends: the left end to the right; moved: turned by half a radian and
        // carried away.
        for (const char* how : {"over", "ends", "moved"}) {
            CAPTURE(how);
            stroke::StrokeScene other = scene;
            if (how[0] == 'o') strip::turn_over(other.strip);
            if (how[0] == 'e') strip::turn_end_for_end(other.strip);
            if (how[0] == 'm') strip::move(other.strip, 0.5, 3.0, -2.0, 40.0, 70.0);
            stroke::place(other, middle, 8.0, 0.0);
            const stroke::StrokeResult r = stroke::press(other, {});
            REQUIRE(r.outcome == stroke::Outcome::reached);
            std::printf("turned %-5s: free angle %+.1e deg, peak %+.1e\n", how,
                        (turn(r.free) - turn(plain.free)) / degree, r.peak_force / plain.peak_force - 1.0);
            CHECK(std::abs(turn(r.free) - turn(plain.free)) < 1e-3 * degree);
            CHECK(std::abs(r.peak_force / plain.peak_force - 1.0) < 1e-4);
        }
    }

}  // TEST_SUITE
