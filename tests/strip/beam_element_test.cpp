// The beam element's strains: their derivatives against differences, and freedom from rigid motion.
//
// Allowed 1e-8 of 1/mm, central differences over 2e-6 mm and rad. Measured: printed.

#include "sim/strip/beam_element.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

using namespace overbend::strip;

namespace {

constexpr double length = 0.7;

using Unknowns = std::vector<double>;

std::vector<Unknowns> places() {
    return {{0.0, 0.0, 0.0, 0.1, 0.2, length, 0.0, 0.0, -0.1, 0.0},
            {1.0, 2.0, 0.5, 0.0, 0.0, 1.0 + 0.7 * std::cos(0.55), 2.0 + 0.7 * std::sin(0.55), 0.6, 0.0, 0.0},
            {-1.0, 0.3, -2.0, 0.3, -0.2, -1.0 + 0.71 * std::cos(-1.93), 0.3 + 0.71 * std::sin(-1.93), -1.85,
             0.2, 0.1},
            {3.0, 0.0, 1.5, 0.0, 0.0, 3.0 + 0.702 * std::cos(1.42), 0.702 * std::sin(1.42), 1.3, 0.0, 0.0}};
}

int place_of(int i) {  // of x, y and theta of both nodes among the unknowns
    return i < 3 ? i : node_unknowns + i - 3;
}

}  // namespace

TEST_SUITE("strip") {
    TEST_CASE("the strains' derivatives are those of differences") {
        const double h = 1e-6;
        double worst = 0.0;
        for (const Unknowns& u : places()) {
            const ElementStrain here = element_strain(u.data(), length);
            const StrainGradient d = strain_gradient(here, length);
            for (int i = 0; i < 6; ++i) {
                Unknowns down = u, up = u;
                down[place_of(i)] -= h, up[place_of(i)] += h;
                const ElementStrain low = element_strain(down.data(), length),
                                    high = element_strain(up.data(), length);
                const auto slope = [&](double a, double b) { return (b - a) / (2.0 * h); };
                worst = std::max({worst, std::abs(slope(low.G, high.G) - d.G[i]),
                                  std::abs(slope(low.g, high.g) - d.g[i]),
                                  std::abs(slope(low.k, high.k) - d.k[i])});
            }
        }
        std::printf("beam element: first derivatives %.1e off\n", worst);
        CHECK(worst < 1e-8);
    }

    TEST_CASE("turning and shifting an element as a whole does not strain it") {
        for (const Unknowns& u : places()) {
            const ElementStrain before = element_strain(u.data(), length);
            for (const double turn : {0.3, 1.5, 3.0, -2.2}) {
                Unknowns v = u;
                for (const int i : {0, node_unknowns}) {
                    v[i] = std::cos(turn) * u[i] - std::sin(turn) * u[i + 1] + 4.0;
                    v[i + 1] = std::sin(turn) * u[i] + std::cos(turn) * u[i + 1] - 7.0;
                    v[i + 2] = u[i + 2] + turn;
                }
                const ElementStrain after = element_strain(v.data(), length);
                CHECK(std::abs(after.G - before.G) < 1e-13);
                CHECK(std::abs(after.g - before.g) < 1e-13);
                CHECK(std::abs(after.k - before.k) < 1e-13);
                CHECK((after.section() - before.section()).norm() < 1e-12);
            }
        }
    }

}  // TEST_SUITE
