// The strip as an elastica: an end-loaded cantilever bent far, and one rolled up by a moment.
//
// Source  deflection w, shortening u and turn of the tip over P L^2/EI: K. Mattiasson, Int. J. Numer. Methods
//         Eng. 17 (1981) 145-153, and K. E. Bisshopp & D. C. Drucker, Q. Appl. Math. 3 (1945) 272-275;
//         handbook.csv says which were seen, the others are the same elliptic integrals. End moment: a
//         circle.
// Here    beam elements of the strip with an elastic law, L/t = 1000 (tests/strip/cantilever.h).
// Allowed 1e-4 of the length and 1e-4 rad.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "sim/units.h"
#include "tests/outside/handbook.h"
#include "tests/strip/cantilever.h"

using namespace overbend::tests;
using overbend::pi;

namespace {

constexpr double length = Cantilever::slender;

void bend_on(Cantilever& c, double& reached, double goal, bool by_moment) {
    const double full = by_moment ? c.stiffness() / length : c.stiffness() / (length * length);
    const int steps = std::max(2, static_cast<int>(std::ceil((goal - reached) / (by_moment ? 0.2 : 0.05))));
    for (int i = 1; i <= steps; ++i) {
        const double load = full * (reached + (goal - reached) * i / steps);
        REQUIRE(solve_for(c, by_moment ? 0.0 : load, by_moment ? load : 0.0) >= 0);
    }
    reached = goal;
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("an end-loaded cantilever bends as the elliptic integrals say") {
        std::vector<double> loads;
        for (const HandbookRow& row : handbook_rows("ELA-")) loads.push_back(numbers_in(row.id)[0]);
        std::sort(loads.begin(), loads.end());
        loads.erase(std::unique(loads.begin(), loads.end()), loads.end());
        Cantilever c(200);
        double reached = 0.0;
        for (const double load : loads) {
            bend_on(c, reached, load, false);
            for (const HandbookRow& row : handbook_rows("ELA-")) {
                if (numbers_in(row.id)[0] != load) continue;
                const bool deflection = row.id.find("-wL") != std::string::npos;
                const bool shortening = row.id.find("-uL") != std::string::npos;
                const double ours = deflection   ? c.tip_y() / length
                                    : shortening ? 1.0 - c.tip_x() / length
                                                 : c.tip_turn();
                const char* quantity = deflection   ? "deflection"
                                       : shortening ? "shortening"
                                                    : "turn of the tip";
                compare({"elastica", "elliptic integrals", row.id, quantity,
                         deflection || shortening ? "L" : "rad"},
                        row.number(), ours, absolute(1e-4));
            }
        }
    }

    TEST_CASE("an end moment rolls a cantilever up") {
        Cantilever c(200);
        double reached = 0.0;
        for (const char* id : {"ELM-0.25", "ELM-0.5", "ELM-1", "ELM-2"}) {
            const HandbookRow& row = handbook_row(id);
            bend_on(c, reached, numbers_in(row.id)[0] * pi, true);
            compare({"elastica", "circle", row.id, "tip along", "L"}, row.number(0), c.tip_x() / length,
                    absolute(1e-4));
            compare({"elastica", "circle", row.id, "tip across", "L"}, row.number(1), c.tip_y() / length,
                    absolute(1e-4));
        }
    }

}  // TEST_SUITE
