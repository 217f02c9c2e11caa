// The order of random parts of up to six bends, found by the search, against every order one after the other:
// with the same rules of what goes, so that the search alone is checked (what goes is checked in
// stroke_room_test.cpp).

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/job/plan/attempt.h"
#include "tests/plan/enumerate_orders.h"
#include "tests/planning/random_part.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

TEST_CASE("the cheapest order of a part is the cheapest of all its orders") {
    int solved = 0, unsolvable = 0;
    long orders = 0;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        CAPTURE(seed);
        const Case c = tests::random_part(seed, 1 + static_cast<int>(seed % 6));
        const std::unique_ptr<Attempt> attempt = search_with(c, {3});
        REQUIRE(attempt->choices.unserved.empty());
        const tests::Enumerated all = tests::enumerate_orders(attempt->ways->problem());
        REQUIRE(attempt->search.best.empty() == all.seconds.empty());
        orders += all.orders;
        if (all.seconds.empty()) {
            ++unsolvable;
            CHECK(attempt->search.furthest == all.furthest);
            CHECK_FALSE(why_not(*attempt).empty());
            continue;
        }
        ++solved;
        for (std::size_t i = 0; i < attempt->search.best.size(); ++i)
            CHECK(std::abs(attempt->search.best[i].seconds - all.seconds[i]) < 1e-9);
    }
    CHECK(solved > 20);
    CHECK(unsolvable > 3);
    CHECK(orders > 5000);
}

TEST_CASE("a bend that has to come first does so in every order") {
    int looked_at = 0;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        const Case c = tests::random_part(seed, 4);
        const std::unique_ptr<Attempt> attempt = search_with(c, {5});
        if (attempt->search.best.empty()) continue;
        for (const Precedence& p : attempt->known().pairs)
            for (const plan::Order& order : attempt->search.best) {
                int first = -1, then = -1;
                for (int i = 0; i < static_cast<int>(order.strokes.size()); ++i) {
                    const plan::BendSet bends = attempt->ways->way(order.strokes[i].way).bends;
                    if (bends >> p.first & 1) first = i;
                    if (bends >> p.then & 1) then = i;
                }
                CHECK(first <= then);
                ++looked_at;
            }
    }
    CHECK(looked_at > 20);
}
