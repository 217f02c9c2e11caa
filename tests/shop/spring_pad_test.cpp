// Springs by hand, and the choice of one. The books' own examples stand in
// tests/outside/spring_rows_test.cpp.
//
//   d 4, D 24, n 6, G 81700:  rate 81700 x 256 / (8 x 13824 x 6) = 31.52 N/mm
//   C = 6, Wahl 23/20 + 0.615/6 = 1.2525; at 300 N  8 x 300 x 24 x 1.2525 / (pi x 64) = 358.8 MPa

#include <doctest/doctest.h>

#include <random>

#include "sim/errors.h"
#include "sim/shop/spring_pad.h"

using namespace overbend;
using namespace overbend::shop;
using doctest::Approx;

TEST_CASE("Wahl's factor and the shear stress") {
    CHECK(wahl_factor(6.0) == Approx(1.2525));
    const tool::HelicalSpring s{4.0, 24.0, 6.0, 81700.0};
    CHECK(tool::spring_rate(s) == Approx(31.52).epsilon(1e-3));
    CHECK(shear_stress(s, 300.0) == Approx(358.8).epsilon(1e-3));
}

// 20 turns in the wire's way: (6 + 2) x 4 = 32 solid; gaps of 0.5 between 8 turns: 7 x 0.5 = 3.5; 300 N over
// 31.52 N/mm is 9.518 mm: 45.02 free.
TEST_CASE("lengths of a spring") {
    SpringRequest request;
    request.force_start = 300.0 - 31.5215 * 8.0, request.force_end = 300.0, request.travel = 8.0,
    request.gap = 0.5;
    const ChosenSpring s = spring_of(request, spring_wires()[0], 4.0, 24.0);
    CHECK(s.spring.turns == 6.0);
    CHECK(s.solid_length == Approx(32.0));
    CHECK(s.free_length == Approx(45.02).epsilon(1e-3));
    CHECK(s.installed_length == Approx(43.5));
    CHECK(s.slenderness == Approx(45.02 / 24.0).epsilon(1e-3));
    CHECK(s.force_start == Approx(request.force_start).epsilon(1e-3));
}

// Gaps by EN 13906-1 where the request gives none: 6 (0.0015 x 24^2 / 4 + 0.1 x 4) = 3.696; 32 + 3.696 + 8.
TEST_CASE("least gaps between the turns") {
    SpringRequest request;
    request.force_start = 300.0 - 31.5215 * 8.0, request.force_end = 300.0, request.travel = 8.0;
    const ChosenSpring s = spring_of(request, spring_wires()[0], 4.0, 24.0);
    CHECK(s.installed_length == Approx(43.696));
    CHECK(s.free_length == Approx(32.0 + 3.696 + 300.0 / 31.5215).epsilon(1e-3));
}

// Wire of 4 mm: 2211 / 4^0.145 = 1808.4 MPa, of which 45 per cent may be shear: 813.8; oil-tempered
// 1855 / 4^0.187 = 1431.4, 50 per cent: 715.7. Shigley, tables 10-4 and 10-6.
TEST_CASE("what the wires bear") {
    SpringRequest request;
    request.force_start = 50.0, request.force_end = 300.0, request.travel = 8.0;
    CHECK(spring_wires()[0].strength(4.0) == Approx(1808.4).epsilon(1e-4));
    CHECK(spring_wires()[1].strength(4.0) == Approx(1431.4).epsilon(1e-4));
    CHECK(spring_of(request, spring_wires()[0], 4.0, 24.0).allowed_stress == Approx(813.8).epsilon(1e-4));
    CHECK(spring_of(request, spring_wires()[1], 4.0, 24.0).allowed_stress == Approx(715.7).epsilon(1e-4));
}

TEST_CASE("random requests: what is chosen does what was asked for") {
    std::mt19937 random(17);
    std::uniform_real_distribution<double> start(0.0, 600.0), more(50.0, 800.0), travel(2.0, 25.0);
    int found = 0;
    for (int i = 0; i < 200; ++i) {
        SpringRequest request;
        request.force_start = start(random), request.force_end = request.force_start + more(random);
        request.travel = travel(random);
        const std::optional<ChosenSpring> s = choose_spring(request);
        if (!s) continue;
        ++found;
        const double rate = tool::spring_rate(s->spring);
        CHECK(s->rate == Approx(rate));
        CHECK(s->stress <= s->allowed_stress);
        CHECK(s->slenderness < buckles_from);
        // no stiffer than asked for, so that it presses at least so hard at the start; as hard at the end
        CHECK(s->force_start >= request.force_start - 1e-9);
        CHECK((s->free_length - s->installed_length) * rate == Approx(s->force_start).epsilon(1e-9));
        CHECK((s->free_length - s->installed_length + request.travel) * rate == Approx(request.force_end));
        // and not solid yet at the end
        CHECK(s->installed_length - request.travel > s->solid_length);
    }
    CHECK(found > 150);
}

TEST_CASE("a lighter spring is not to be had in the series") {
    SpringRequest request;
    request.force_start = 400.0, request.force_end = 600.0, request.travel = 10.0;
    const std::optional<ChosenSpring> chosen = choose_spring(request);
    REQUIRE(chosen);
    for (const SpringWire& wire : spring_wires())
        for (const double d : wire_series()) {
            if (d < wire.least || d > wire.most) continue;
            for (double index = 4.0; index <= 12.0; index += 0.5) {
                const ChosenSpring s = spring_of(request, wire, d, index * d);
                const bool does = s.stress <= s.allowed_stress && s.slenderness < buckles_from &&
                                  s.spring.turns >= 2.0 && s.spring.turns <= 25.0;
                if (does) CHECK(s.mass >= chosen->mass);
            }
        }
}

TEST_CASE("room, and requests that cannot be") {
    SpringRequest request;
    request.force_start = 400.0, request.force_end = 600.0, request.travel = 10.0;
    const std::optional<ChosenSpring> free = choose_spring(request);
    REQUIRE(free);
    request.most_outside = 0.9 * (free->spring.coil_diameter + free->spring.wire);
    const std::optional<ChosenSpring> slim = choose_spring(request);
    if (slim) {
        CHECK(slim->spring.coil_diameter + slim->spring.wire <= request.most_outside);
        CHECK(slim->mass >= free->mass);
    }
    request.most_outside = 1e9, request.most_length = 0.9 * free->installed_length;
    const std::optional<ChosenSpring> low = choose_spring(request);
    REQUIRE(low);
    CHECK(low->installed_length <= request.most_length);
    CHECK(low->mass >= free->mass);
    request.most_length = 5.0;  // less than its travel
    CHECK_FALSE(choose_spring(request));
    request.most_length = 1e9, request.most_outside = 3.0;
    CHECK_FALSE(choose_spring(request));
    request.force_end = 400.0;
    CHECK_THROWS_AS(choose_spring(request), OutOfRange);
    request.force_end = 500.0, request.travel = 0.0;
    CHECK_THROWS_AS(choose_spring(request), OutOfRange);
}

// Pad of 40 x 60 mm. 1: 40 mm. 2: one behind the other along the bend line, 30 mm each, not side by side at
// 20. 4: two by two, 20 and 30: 20 mm. 6: two by three, 20 and 20. 3: one row of each, 40 and 20: 20 mm.
TEST_CASE("springs stand side by side in both directions of a pad") {
    const auto each = [](int count) { return spring_rows(count, 40.0, 60.0).each; };
    CHECK(each(1) == Approx(40.0));
    CHECK(each(2) == Approx(30.0));
    CHECK(each(3) == Approx(20.0));
    CHECK(each(4) == Approx(20.0));
    CHECK(each(6) == Approx(20.0));
    CHECK(each(8) == Approx(15.0));  // two by four: 20 and 15
    for (const int count : {1, 2, 3, 4, 6, 8}) {
        const SpringRows rows = spring_rows(count, 40.0, 60.0);
        CHECK(rows.in_a_row * rows.rows == count);
        CHECK(rows.in_a_row * rows.each <= 40.0 + 1e-9);
        CHECK(rows.rows * rows.each <= 60.0 + 1e-9);
    }
    CHECK(spring_rows(2, 60.0, 40.0).rows == 1);
}
