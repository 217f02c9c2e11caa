// The tabulated flow curve against the law itself, and its slope and integral against its stress.
//
// Here    the laws' own formulas are the reference: flow_point.
// Allowed stress 1e-6, slope 1e-3 of the law's (far from it at p = 0, where a Swift law of small e0 is steep:
//         1e-2), integral's difference quotient 1e-6. Measured: printed.

#include "sim/material/flow_curve.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

#include "tests/tolerance.h"

using namespace overbend::material;
using overbend::tests::relative_error;

namespace {

struct Named {
    const char* name;
    Hardening law;
};

// Invented figures.
const std::vector<Named> laws = {{"Swift", Swift{520.0, 0.006, 0.22}},
                                 {"steep Swift", Swift{1500.0, 0.0008, 0.5}},
                                 {"Hollomon", Hollomon{534.1, 0.1586}},
                                 {"Voce", Voce{276.0, 54.0, 14.0}},
                                 {"linear", Linear{300.0, 350.0}},
                                 {"table", Table{{0.0, 0.01, 0.1, 0.5}, {300.0, 340.0, 400.0, 430.0}}}};
constexpr double youngs_modulus = 206e3;

// Plastic strains from 1e-7 to 10, none of them a knot.
std::vector<double> strains() {
    std::vector<double> p{0.0};
    for (double v = 1.013e-7; v < 10.0; v *= 1.07) p.push_back(v);
    return p;
}

}  // namespace

TEST_SUITE("material") {
    TEST_CASE("the tabulated flow curve is the law") {
        for (const Named& n : laws) {
            CAPTURE(n.name);
            const FlowCurve curve(n.law, youngs_modulus);
            double worst = 0.0, worst_slope = 0.0, worst_work = 0.0;
            for (const double p : strains()) {
                CAPTURE(p);
                const FlowPoint found = curve.at(p), law = flow_point(n.law, youngs_modulus, p);
                worst = std::max(worst, relative_error(found.stress, law.stress));
                worst_slope = std::max(worst_slope,
                                       std::abs(found.slope - law.slope) / (law.slope + 0.01 * law.stress));
                worst_work = std::max(worst_work, std::abs(found.work - law.work) / (law.work + 1e-9));
                CHECK(relative_error(found.stress, law.stress) < 1e-6);
            }
            std::printf("flow curve %-12s stress %.1e, slope %.1e, work %.1e\n", n.name, worst, worst_slope,
                        worst_work);
            CHECK(worst_slope < 1e-3);
            CHECK(worst_work < 1e-5);
            CHECK(curve.first_yield() ==
                  doctest::Approx(flow_point(n.law, youngs_modulus, 0.0).stress).epsilon(1e-9));
        }
    }

    TEST_CASE("stress is the slope of the work, slope that of the stress") {
        for (const Named& n : laws) {
            CAPTURE(n.name);
            const FlowCurve curve(n.law, youngs_modulus);
            for (const double p : strains()) {
                if (p < 1e-5) continue;  // differences are lost in rounding
                CAPTURE(p);
                const double h = 1e-4 * p;
                const FlowPoint low = curve.at(p - h), here = curve.at(p), high = curve.at(p + h);
                CHECK(relative_error((high.work - low.work) / (2.0 * h), here.stress) < 1e-6);
                CHECK(std::abs((high.stress - low.stress) / (2.0 * h) - here.slope) <
                      1e-3 * (here.slope + here.stress));
            }
        }
    }

}  // TEST_SUITE
