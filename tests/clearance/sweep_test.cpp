// What the strip hits between two states: a thin pin that it passes over is found, and nothing is found where
// many states in between show nothing.

#include "sim/clearance/sweep.h"

#include <doctest/doctest.h>

#include <cmath>

#include "sim/clearance/access.h"
#include "sim/tool/block.h"
#include "sim/units.h"
#include "tests/sweep/numbers.h"

using namespace overbend;
using clearance::Surroundings;
using tests::Numbers;

namespace {

// A straight flange of 60 mm from the origin, turned by these angles in the states that follow one another.
stroke::Recording swinging(const std::vector<double>& turns) {
    stroke::Recording r;
    r.thickness = 1.0;
    for (int i = 0; i <= 30; ++i) r.blank_position.push_back(2.0 * i);
    for (const double turn : turns) {
        stroke::State s;
        s.phase = stroke::Phase::pressing;
        s.travel = turn;
        for (const double at : r.blank_position) {
            s.x.push_back(at * std::cos(turn)), s.y.push_back(at * std::sin(turn)), s.theta.push_back(turn);
        }
        r.states.push_back(s);
    }
    return r;
}

// A square pin of this side.
tool::RigidTool pin(double side, const tool::Vec2& at) {
    const double h = 0.5 * side;
    return {"pin", tool::Role::punch,
            tool::round_corners({{{-h, -h}, 0}, {{h, -h}, 0}, {{h, h}, 0}, {{-h, h}, 0}}), at};
}

const stroke::FormingZone zone{-1.0, 5.0};

// With the states in between that lie on straight ways, as the sweep takes them.
bool many_states_hit(const stroke::Recording& r) {
    constexpr int between = 200;
    stroke::Recording fine = r;
    fine.states.clear();
    for (int k = 0; k <= between; ++k) {
        const double share = static_cast<double>(k) / between;
        stroke::State s = r.states[0];
        for (std::size_t i = 0; i < s.x.size(); ++i) {
            s.x[i] += share * (r.states[1].x[i] - s.x[i]);
            s.y[i] += share * (r.states[1].y[i] - s.y[i]);
            s.theta[i] += share * (r.states[1].theta[i] - s.theta[i]);
        }
        fine.states.push_back(s);
    }
    const Surroundings all(fine);
    for (int k = 0; k <= between; ++k)
        if (clearance::least_distance(all, k, zone).distance < 0.0) return true;
    return false;
}

}  // namespace

TEST_CASE("a pin between two states does not pass through the strip unseen") {
    stroke::Recording r = swinging({0.0, 0.3});
    r.tools.push_back(pin(0.4, {50.0, 8.0}));
    const Surroundings all(r);
    REQUIRE(clearance::least_distance(all, 0, zone).distance > 0.0);
    REQUIRE(clearance::least_distance(all, 1, zone).distance > 0.0);
    const auto hits = clearance::hits_between(all, zone);
    REQUIRE(hits.size() == 1);
    CHECK(hits[0].distance < 0.0);
    CHECK(hits[0].tool == 0);
    CHECK(hits[0].state == 1);
    CHECK(hits[0].travel > 0.05);
    CHECK(hits[0].travel < 0.25);
}

TEST_CASE("random pins: found between two states when, and only when, many states in between show them") {
    int passed = 0, clear = 0;
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        Numbers draw(seed);
        stroke::Recording r = swinging({0.0, draw.between(0.05, 0.4)});
        r.tools.push_back(pin(draw.between(0.3, 3.0), {draw.between(10.0, 58.0), draw.between(1.0, 24.0)}));
        const Surroundings all(r);
        if (clearance::least_distance(all, 0, zone).distance <= 0.0) continue;
        if (clearance::least_distance(all, 1, zone).distance <= 0.0) continue;
        const bool found = !clearance::hits_between(all, zone).empty();
        CAPTURE(seed);
        CHECK(found == many_states_hit(r));
        (found ? passed : clear) += 1;
    }
    CHECK(passed > 20);
    CHECK(clear > 50);
}

TEST_CASE("a strip that lies on a die is not in it, one bent down into it is") {
    // level over a die that is wider than the zone; then with its end turned down
    stroke::Recording r = swinging({0.0});
    r.tools.push_back(
        {"die", tool::Role::die, tool::block_facing_up({100.0, 0.0, 0.0, 30.0}), {0.0, -0.501}});
    CHECK(clearance::least_distance(Surroundings(r), 0, zone).tool == -1);
    stroke::State& s = r.states[0];
    for (std::size_t i = 15; i < s.x.size(); ++i) {  // a right angle down from 30 mm on
        s.x[i] = s.x[15], s.y[i] = -(r.blank_position[i] - 30.0), s.theta[i] = -0.5 * pi;
    }
    const clearance::Closest hit = clearance::least_distance(Surroundings(r), 0, zone);
    CHECK(hit.tool == 0);
    CHECK(hit.distance < -5.0);
}

TEST_CASE("a gauge that draws back is in the way only while the strip is placed") {
    stroke::Recording r = swinging({0.3});
    r.tools.push_back(pin(8.0, {50.0, 15.0}));
    r.tools[0].role = tool::Role::gauge;
    CHECK(clearance::least_distance(Surroundings(r), 0, zone).tool == 0);
    r.tools[0].draws_back = 40.0;
    CHECK(clearance::least_distance(Surroundings(r), 0, zone).tool == -1);
    r.states[0].phase = stroke::Phase::placed;
    CHECK(clearance::least_distance(Surroundings(r), 0, zone).tool == 0);
}

TEST_CASE("a strip is placed and removed in the plane, unless something overhangs it") {
    // Two states of a level strip on its die, a punch above.
    stroke::Recording r = swinging({0.0, 0.0});
    r.states[0].travel = r.states[1].travel = 0.0;
    r.tools.push_back({"die", tool::Role::die, tool::block_facing_up({40.0, 0.0, 0.0, 30.0}), {30.0, -0.51}});
    r.tools.push_back(
        {"punch", tool::Role::punch, tool::block_facing_down({10.0, 0.0, 0.0, 50.0}), {30.0, 0.51}});
    const clearance::Access open = clearance::access_of(Surroundings(r), 80.0);
    CHECK(open.in_plane_in);
    CHECK(open.in_plane_out);

    // the end of the strip turned back over the punch's foot: an L whose foot it hooks
    stroke::Recording hooked = r;
    hooked.tools[1].outline = tool::round_corners({{{-5.0, 0.0}, 0},
                                                   {{15.0, 0.0}, 0},
                                                   {{15.0, 8.0}, 0},
                                                   {{5.0, 8.0}, 0},
                                                   {{5.0, 50.0}, 0},
                                                   {{-5.0, 50.0}, 0}});
    stroke::State& s = hooked.states[1];
    for (std::size_t i = 24; i < s.x.size(); ++i) {  // up behind the foot from 48 mm on
        s.x[i] = s.x[24], s.y[i] = r.blank_position[i] - 48.0, s.theta[i] = 0.5 * pi;
    }
    for (std::size_t i = 29; i < s.x.size(); ++i) {  // and back over it
        s.x[i] = s.x[28] - 3.0 * static_cast<double>(i - 28), s.y[i] = 10.0, s.theta[i] = pi;
    }
    const clearance::Access out = clearance::access_of(Surroundings(hooked), 80.0);
    CHECK(out.in_plane_in);
    CHECK_FALSE(out.in_plane_out);
    CHECK(out.blocked_out_by == 1);
}
