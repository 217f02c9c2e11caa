// Pure bending of a strip at large strain against a finite-element solver: moment, curvature that stays,
// thickness, strains at both surfaces.
//
// Source  25 states computed with CalculiX 2.20, a general-purpose finite-element solver (Debian's
//         calculix-ccx): 16 x 24 CPE8R elements over a length of three thicknesses, NLGEOM, *PLASTIC as true
//         stress against logarithmic plastic strain, one end a symmetry line, a couple on a stiff block at
//         the other; radii from circle fits, interpolated to the round r/t. The metals are invented
//         (finite_element_cards.h).
// Here    41 layers, steps of 0.001 of curvature times thickness; curvature is 2 / (inner radius + outer
//         radius) of the strip as it is.
// Holds   1 / curvature from 100 down to 1.5 thicknesses (r_over_t).
// Allowed moment 0.6 per cent; free curvature 0.5 per cent or 5e-5 per mm; thickness ratio 0.002; strains
//         0.003. Measured: the table of the manual.

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "sim/material/pure_bending.h"
#include "tests/outside/finite_element_cards.h"
#include "tests/outside/table.h"

using namespace overbend;
using namespace overbend::material;
using namespace overbend::tests;

namespace {

struct Reference {
    const char* card;
    double thickness, r_over_t, curvature, moment, free_curvature, thickness_ratio, inner_strain,
        outer_strain;
};

const std::vector<Reference> rows = {
    {"A1", 1, 100.0, 0.01, 52.26, 0.00723, 1.0000, -0.0050, 0.0050},
    {"A1", 1, 40.0, 0.025, 58.61, 0.02189, 0.9999, -0.0125, 0.0125},
    {"A1", 1, 20.0, 0.05, 65.38, 0.04653, 0.9998, -0.0251, 0.0249},
    {"A1", 1, 10.0, 0.1, 74.16, 0.09606, 0.9992, -0.0505, 0.0495},
    {"A1", 1, 5.0, 0.2, 84.67, 0.19548, 0.9967, -0.1017, 0.0983},
    {"A1", 1, 2.5, 0.4, 96.42, 0.39478, 0.9899, -0.2105, 0.1907},
    {"A2", 1, 100.0, 0.01, 92.83, 0.00475, 1.0000, -0.0050, 0.0050},
    {"A2", 1, 40.0, 0.025, 102.44, 0.01920, 0.9999, -0.0125, 0.0125},
    {"A2", 1, 20.0, 0.05, 111.84, 0.04367, 0.9997, -0.0250, 0.0250},
    {"A2", 1, 5.0, 0.2, 150.58, 0.19139, 0.9956, -0.1005, 0.0993},
    {"A2", 1, 1.5, 0.666667, 212.33, 0.65385, 0.9706, -0.3609, 0.3102},
    {"A3", 1, 100.0, 0.01, 61.28, 0.00050, 1.0000, -0.0050, 0.0050},
    {"A3", 1, 40.0, 0.025, 77.55, 0.01298, 0.9999, -0.0125, 0.0125},
    {"A3", 1, 20.0, 0.05, 81.61, 0.03735, 0.9998, -0.0251, 0.0249},
    {"A3", 1, 10.0, 0.1, 84.91, 0.08680, 0.9989, -0.0501, 0.0499},
    {"A3", 1, 2.5, 0.4, 90.15, 0.38560, 0.9870, -0.2069, 0.1929},
    {"A4", 1, 100.0, 0.01, 173.99, 0.0, 1.0000, -0.0050, 0.0050},
    {"A4", 1, 40.0, 0.025, 311.58, 0.00709, 0.9999, -0.0125, 0.0125},
    {"A4", 1, 10.0, 0.1, 346.44, 0.08004, 0.9989, -0.0502, 0.0498},
    {"A4", 1, 5.0, 0.2, 349.66, 0.17967, 0.9953, -0.1002, 0.0993},
    {"A4", 1, 2.5, 0.4, 349.89, 0.37914, 0.9845, -0.2035, 0.1942},
    {"A4", 1, 1.5, 0.666667, 349.57, 0.64507, 0.9685, -0.3578, 0.3078},
    {"A5", 1, 100.0, 0.01, 83.38, 0.00545, 1.0000, -0.0050, 0.0050},
    {"A5", 1, 40.0, 0.025, 86.09, 0.02030, 0.9999, -0.0125, 0.0125},
    {"A5", 1, 20.0, 0.05, 86.42, 0.04528, 0.9997, -0.0250, 0.0250},
};

BendingPoint bend_to(const Reference& row, int layers) {
    std::vector<double> path;
    const int steps = static_cast<int>(std::ceil(row.curvature * row.thickness / 0.001 - 1e-9));
    for (int i = 1; i <= steps; ++i) path.push_back(row.curvature * i / steps);
    return bend_in_pure_moment(tests::finite_element_card(row.card), row.thickness, path, layers).back();
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("pure bending agrees with finite elements down to sharp bends") {
        REQUIRE(rows.size() == 25);
        for (const Reference& row : rows) {
            CAPTURE(row.card);
            CAPTURE(row.r_over_t);
            const BendingPoint p = bend_to(row, 41);
            char name[40];
            std::snprintf(name, sizeof name, "%s r/t %g", row.card, row.r_over_t);
            const auto about = [&](const char* quantity, const char* unit) {
                return About{"pure bending", "CalculiX 2.20, stored", name, quantity, unit};
            };
            compare(about("moment", "N mm/mm"), row.moment, p.moment, relative(0.006));
            compare(about("free curvature", "1/mm"), row.free_curvature, p.free_curvature,
                    larger_of(5e-5, 0.005));
            compare(about("thickness over first", ""), row.thickness_ratio, p.thickness / row.thickness,
                    absolute(0.002));
            compare(about("inner strain", ""), row.inner_strain, p.inner_log_strain, absolute(0.003));
            compare(about("outer strain", ""), row.outer_strain, p.outer_log_strain, absolute(0.003));
            CHECK(std::abs(p.axial_force_residue) < 1e-6 * p.moment / row.thickness);
        }
    }

}  // TEST_SUITE
