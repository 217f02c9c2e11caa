// Helical springs behind pads: textbook examples.
//
//   k = G d^4 / (8 D^3 n)

#include <doctest/doctest.h>

#include "sim/tool/spring.h"
#include "tests/outside/handbook.h"

using overbend::tool::spring_rate;
using namespace overbend::tests;

TEST_SUITE("outside") {
    TEST_CASE("rates of helical springs") {
        const auto about = [](const char* id, const char* source, const char* unit) {
            return About{"springs", source, id, "rate", unit};
        };
        // G 81370, d 7, D 42, 8 turns: of the formula itself.
        compare(about("SPR-k", "Shigley; Bhandari", "N/mm"), 81370.0 * 2401.0 / (8.0 * 74088.0 * 8.0),
                spring_rate({7.0, 42.0, 8.0, 81370.0}), relative(1e-9));
        compare(about("SPR-BH-k", "Bhandari, ex. 10.1", "N/mm"), handbook_row("SPR-BH-k").number(),
                spring_rate({7.0, 42.0, 8.0, 81370.0}), absolute(0.001));
        // In inches and psi; the mean diameter is the outer one less the wire's, 0.4005,
        // which the book rounds.
        compare(about("SPR-SH", "Shigley, ex. 10-1", "lbf/in"), handbook_row("SPR-SH").number(),
                spring_rate({0.037, 0.400, 10.5, 11.85e6}), absolute(0.005));
    }

    TEST_CASE("springs are not designed") {
        for (const HandbookRow& row : handbook_rows("SPR-BH-")) {
            if (row.id == "SPR-BH-k") continue;
            no_counterpart(
                {"springs", "Bhandari, ex. 10.1", row.id, "design", row.unit},
                "the design of a spring (wire, turns, stress); overbend takes the spring as it is and "
                "works its rate out");
        }
    }

}  // TEST_SUITE
