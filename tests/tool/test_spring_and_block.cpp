// Springs and plain blocks: the rate of a helical spring, and shapes that can and cannot be.

#include <doctest/doctest.h>

#include "sim/errors.h"
#include "sim/tool/block.h"
#include "sim/tool/signed_distance.h"
#include "sim/tool/spring.h"
#include "tests/tolerance.h"

using namespace overbend;
using namespace overbend::tool;
using overbend::tests::relative_error;

// k = G d^4 / (8 D^3 n)
//
// Source  V. B. Bhandari, Design of Machine Elements, example 10.1, p. 408: wire 7 mm, coil 42 mm, 8 turns,
//         G = 81370 MPa, the rate worked out by hand: 81370 x 2401 / (8 x 74088 x 8) = 41.203 N/mm.
//         J. E. Shigley, Mechanical Engineering Design, example 10-1 (from memory): music wire of 0.037 in,
//         outside 7/16 in, so a coil of 0.400 in as it is rounded there, 10.5 active turns,
//         G = 11.85e6 psi: 4.13 lbf/in.
TEST_CASE("a helical spring has the rate of the handbooks") {
    CHECK(relative_error(spring_rate({7.0, 42.0, 8.0, 81370.0}), 41.203) < 2e-5);
    const double in = 25.4, psi = 0.006894757, lbf_per_in = 4.4482216 / 25.4;
    const HelicalSpring shigley{0.037 * in, 0.400 * in, 10.5, 11.85e6 * psi};
    CHECK(relative_error(spring_rate(shigley) / lbf_per_in, 4.13) < 0.0005);
}

TEST_CASE("springs that cannot be are refused with their figure") {
    CHECK_THROWS_WITH_AS(spring_rate({7.0, 6.0, 8.0, 81370.0}), doctest::Contains("coil diameter"),
                         OutOfRange);
    CHECK_THROWS_AS(spring_rate({7.0, 42.0, 0.0, 81370.0}), OutOfRange);
    CHECK_THROWS_AS(spring_rate({7.0, 42.0, 8.0, -1.0}), OutOfRange);
    CHECK_THROWS_AS(check(Spring{-1.0, 2.0}), OutOfRange);
    CHECK_THROWS_AS(check(Spring{}), OutOfRange);
    CHECK_THROWS_AS(check(Spring{1.0, 0.0, 0.0}), OutOfRange);
    CHECK_NOTHROW(check(Spring{0.0, 2.0}));
}

TEST_CASE("a block has its working face at the level 0, with the corners asked for") {
    const Block block{10.0, 1.0, 3.0, 8.0};
    const ArcOutline up = block_facing_up(block), down = block_facing_down(block);
    CHECK(up.box().high.y() == doctest::Approx(0.0));
    CHECK(up.box().low.y() == doctest::Approx(-8.0));
    CHECK(down.box().low.y() == doctest::Approx(0.0));
    CHECK(down.box().high.y() == doctest::Approx(8.0));
    // A corner of radius r leaves r (sqrt 2 - 1) free on the bisector.
    CHECK(nearest(up, Vec2(5.0, 0.0)).distance == doctest::Approx(3.0 * 0.41421356));
    CHECK(nearest(down, Vec2(-5.0, 0.0)).distance == doctest::Approx(1.0 * 0.41421356));
    CHECK_THROWS_AS(block_facing_up({3.0, 2.0, 2.0, 8.0}), OutOfRange);
    CHECK_THROWS_AS(block_facing_up({10.0, 2.0, 2.0, 2.0}), OutOfRange);
}
