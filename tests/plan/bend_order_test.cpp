// The search for the cheapest order against plain enumeration of every order and every way, on random
// problems whose rules have nothing to do with geometry (random parts: order_of_parts_test.cpp beside this
// one).

#include "sim/plan/bend_order.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "sim/errors.h"
#include "tests/plan/enumerate_orders.h"

namespace {

using namespace overbend::plan;
using overbend::tests::enumerate_orders;
using overbend::tests::Enumerated;

// Rules drawn by a seed: which pairs of way and set go, where the gauge stands, whether the strip is slid.
OrderProblem random_problem(unsigned seed, int bends, double chance) {
    std::mt19937 draw(seed);
    const auto below = [&](int n) { return static_cast<int>(draw() % static_cast<unsigned>(n)); };
    OrderProblem p;
    p.bends = bends;
    for (int b = 0; b < bends; ++b)
        for (int i = 0; i < 2; ++i) p.ways.push_back({BendSet{1} << b, below(3), below(2) == 1, i == 1});
    for (int b = 0; b + 1 < bends; ++b)
        if (below(3) == 0) p.ways.push_back({BendSet{3} << b, 3 + below(2), below(2) == 1, below(2) == 1});
    p.costs = {1.0 + below(5),  1.0 * below(4), 1.0 * below(4),
               10.0 * below(4), 1.0 * below(6), 1.0 * below(3)};
    p.use = [seed, chance](int way, BendSet made) {
        std::mt19937 own(seed * 7919u + static_cast<unsigned>(way) * 104729u + made * 1299709u);
        const auto one_of = [&](int n) { return static_cast<int>(own() % static_cast<unsigned>(n)); };
        Use use;
        use.possible = one_of(1000) < 1000.0 * chance;
        use.gauge = 10.0 * one_of(3);
        use.slides = one_of(3);
        return use;
    };
    return p;
}

}  // namespace

TEST_CASE("the cheapest order is the cheapest of all orders") {
    int solved = 0, unsolvable = 0;
    for (unsigned seed = 1; seed <= 120; ++seed) {
        CAPTURE(seed);
        const int bends = 1 + static_cast<int>(seed % 6);
        const OrderProblem p = random_problem(seed, bends, seed % 2 ? 0.6 : 0.3);
        const OrderSearch found = best_orders(p, 4);
        const Enumerated all = enumerate_orders(p);
        REQUIRE(found.best.empty() == all.seconds.empty());
        (all.seconds.empty() ? unsolvable : solved) += 1;
        // the cheapest few, each sequence of bends and tools once
        for (std::size_t i = 0; i < found.best.size(); ++i)
            CHECK(std::abs(found.best[i].seconds - all.seconds[i]) < 1e-9);
        CHECK(found.best.size() == std::min<std::size_t>(4, all.seconds.size()));
        if (all.seconds.empty()) CHECK(found.furthest == all.furthest);
    }
    CHECK(solved > 40);
    CHECK(unsolvable > 10);
}

TEST_CASE("an order's strokes can be made one after the other, and cost what it says") {
    const OrderProblem p = random_problem(5, 6, 0.8);
    const OrderSearch found = best_orders(p, 3);
    REQUIRE(found.best.size() == 3);
    for (const Order& order : found.best) {
        BendSet made = 0;
        for (const OrderStroke& s : order.strokes) {
            CHECK(s.made == made);
            CHECK(p.use(s.way, made).possible);
            CHECK((p.ways[s.way].bends & made) == 0);
            made |= p.ways[s.way].bends;
        }
        CHECK(made == (BendSet{1} << 6) - 1);
        CHECK(order.work.strokes == static_cast<int>(order.strokes.size()));
        CHECK(order.work.seconds(p.costs) == order.seconds);
    }
}

TEST_CASE("with nothing in the way and all costs alike, one set-up a bend is turned as seldom as can be") {
    // Four bends, each with the left or the right end first, the second and third flipped: a turn is never
    // needed, two flips at most, one when the others come first.
    OrderProblem p;
    p.bends = 4;
    for (int b = 0; b < 4; ++b)
        for (const bool right : {false, true})
            p.ways.push_back({BendSet{1} << b, 0, b == 1 || b == 2, right});
    p.costs = {5.0, 2.0, 2.0, 100.0, 10.0, 4.0};
    p.use = [](int, BendSet) { return Use{true, 20.0, 0}; };
    const Order best = best_orders(p, 1).best.at(0);
    CHECK(best.work.turns == 0);
    CHECK(best.work.flips == 1);
    CHECK(best.seconds == 4 * 5.0 + 2.0 + 100.0 + 10.0);
}

TEST_CASE("bends that block each other leave the sets that can be made") {
    OrderProblem p;
    p.bends = 3;
    for (int b = 0; b < 3; ++b) p.ways.push_back({BendSet{1} << b, 0, false, false});
    // 0 and 2 shut one another out
    p.use = [](int way, BendSet made) {
        return Use{!((way == 0 && (made & 4)) || (way == 2 && (made & 1))), 0.0, 0};
    };
    const OrderSearch found = best_orders(p, 1);
    CHECK(found.best.empty());
    CHECK(found.furthest == std::vector<BendSet>{3, 6});
}

TEST_CASE("what cannot be ordered is refused") {
    OrderProblem p;
    p.use = [](int, BendSet) { return Use{true, 0.0, 0}; };
    CHECK_THROWS_AS(best_orders(p, 1), overbend::OutOfRange);
    p.bends = 17;
    CHECK_THROWS_AS(best_orders(p, 1), overbend::OutOfRange);
    p.bends = 2;
    p.ways = {{4, 0, false, false}};
    CHECK_THROWS_AS(best_orders(p, 1), overbend::OutOfRange);
}
