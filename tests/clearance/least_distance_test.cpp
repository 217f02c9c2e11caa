// Distances of a straight strip from a block, known by construction.

#include <doctest/doctest.h>

#include "sim/clearance/least_distance.h"

using namespace overbend;

namespace {

// A strip of thickness 1 along y = 0 from x = -20 to 20, and a square punch of side 4 with its lower face at
// `low`, its middle at x = 15.
stroke::Recording strip_and_block(double low) {
    stroke::Recording r;
    r.thickness = 1.0;
    stroke::State s;
    for (int i = 0; i <= 20; ++i) {
        r.blank_position.push_back(2.0 * i);
        s.x.push_back(2.0 * i - 20.0), s.y.push_back(0.0), s.theta.push_back(0.0);
    }
    r.states.push_back(s);
    r.tools.push_back({"block",
                       tool::Role::punch,
                       tool::round_corners({{{-2, 0}, 0}, {{2, 0}, 0}, {{2, 4}, 0}, {{-2, 4}, 0}}),
                       {15.0, low}});
    return r;
}

}  // namespace

TEST_CASE("clear, touching and overlapping are told apart with their distance") {
    const stroke::FormingZone zone{10.0, 30.0};  // x from -10 to 10: the block is away from it
    CHECK(clearance::least_distance(clearance::Surroundings(strip_and_block(2.0)), 0, zone).distance ==
          doctest::Approx(1.5));
    CHECK(clearance::least_distance(clearance::Surroundings(strip_and_block(0.5)), 0, zone).distance ==
          doctest::Approx(0.0));
    const clearance::Closest deep =
        clearance::least_distance(clearance::Surroundings(strip_and_block(0.2)), 0, zone);
    CHECK(deep.distance == doctest::Approx(-0.3));
    CHECK(deep.blank_position >= 33.0);
    CHECK(deep.blank_position <= 37.0);
}

TEST_CASE("the forming zone is not looked at, and a strip that lies in it all has no distance") {
    CHECK(clearance::least_distance(clearance::Surroundings(strip_and_block(0.2)), 0, {-1.0, 41.0}).tool ==
          -1);
}

TEST_CASE("a punch goes down with the travel") {
    stroke::Recording r = strip_and_block(5.0);
    r.states[0].travel = 3.0;
    CHECK(clearance::least_distance(clearance::Surroundings(r), 0, {10.0, 30.0}).distance ==
          doctest::Approx(1.5));
}
