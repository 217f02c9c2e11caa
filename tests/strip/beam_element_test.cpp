// The beam element: gradient and hessian against differences of its energy, and freedom from rigid motion.
//
// Here    L (W(G, k) + 1/2 S g^2) with a section's potential W, central differences over 2e-6 mm and rad.
// Allowed gradient 1e-6 of the yield force and moment; hessian 1e-4 of its largest entry. Measured: printed.

#include "sim/strip/beam_element.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

#include "sim/material/section.h"

using namespace overbend;
using namespace overbend::strip;

namespace {

constexpr double thickness = 1.0, length = 0.7;
constexpr int count = 15;

struct Element {
    material::LayerLaw law;
    material::Layers layers = material::gauss_layers(thickness, count);
    std::vector<material::LayerHistory> history = std::vector<material::LayerHistory>(count);
    std::vector<double> stress = std::vector<double>(count, 0.0), width_stress = stress;
    double shear = 0.0;

    explicit Element(const material::Card& card)
        : law(card), shear(5.0 / 6.0 * law.shear_modulus * thickness) {}
    material::SectionResponse section(const ElementStrain& s) {
        return material::respond(law, layers.height.data(), layers.weight.data(), count, history.data(), s.G,
                                 s.k);
    }
    double energy(const Vec6& u) {
        const ElementStrain s = element_strain(u.data(), length);
        return length * (section(s).energy + 0.5 * shear * s.g * s.g);
    }
    void forces(const Vec6& u, Vec6& gradient, Mat6& hessian) {
        const ElementStrain s = element_strain(u.data(), length);
        element_forces(s, section(s), shear, length, gradient, hessian);
    }
};

material::Card invented() {
    material::Card card;
    card.youngs_modulus = 206e3;
    card.hardening = material::Swift{520.0, 0.006, 0.22};
    return card;
}

std::vector<Vec6> places() {
    std::vector<Vec6> all(4);
    all[0] << 0.0, 0.0, 0.0, length, 0.0, 0.0;
    all[1] << 1.0, 2.0, 0.5, 1.0 + 0.7 * std::cos(0.55), 2.0 + 0.7 * std::sin(0.55), 0.6;
    all[2] << -1.0, 0.3, -2.0, -1.0 + 0.71 * std::cos(-1.93), 0.3 + 0.71 * std::sin(-1.93), -1.85;
    all[3] << 3.0, 0.0, 1.5, 3.0 + 0.702 * std::cos(1.42), 0.702 * std::sin(1.42), 1.3;
    return all;
}

}  // namespace

TEST_SUITE("strip") {
    TEST_CASE("an element's gradient and hessian are those of its energy") {
        const double h = 1e-6;
        for (const bool bent : {false, true}) {
            Element element(invented());
            if (bent)
                for (const double k : {0.05, 0.15, 0.1, -0.02})
                    material::advance(element.law, element.layers.height.data(), element.layers.weight.data(),
                                      count, element.history.data(), element.stress.data(),
                                      element.width_stress.data(), 1.001, k);
            double worst_gradient = 0.0, worst_hessian = 0.0;
            for (const Vec6& u : places()) {
                Vec6 gradient, low, high;
                Mat6 hessian, unused;
                element.forces(u, gradient, hessian);
                CHECK((hessian - hessian.transpose()).norm() < 1e-12 * hessian.norm());
                for (int i = 0; i < 6; ++i) {
                    Vec6 down = u, up = u;
                    down(i) -= h, up(i) += h;
                    const double slope = (element.energy(up) - element.energy(down)) / (2.0 * h);
                    worst_gradient = std::max(
                        worst_gradient, std::abs(slope - gradient(i)) / element.law.plane_strain_yield());
                    element.forces(down, low, unused);
                    element.forces(up, high, unused);
                    const Vec6 column = (high - low) / (2.0 * h);
                    worst_hessian =
                        std::max(worst_hessian, (column - hessian.col(i)).lpNorm<Eigen::Infinity>() /
                                                    hessian.lpNorm<Eigen::Infinity>());
                }
            }
            std::printf("beam element: gradient %.1e, hessian %.1e\n", worst_gradient, worst_hessian);
            CHECK(worst_gradient < 1e-6);
            CHECK(worst_hessian < 1e-4);
        }
    }

    TEST_CASE("turning and shifting an element as a whole does not strain it") {
        const Vec6 u = places()[1];
        const ElementStrain before = element_strain(u.data(), length);
        for (const double turn : {0.3, 1.5, 3.0, -2.2}) {
            Vec6 v = u;
            for (const int i : {0, 3}) {
                v(i) = std::cos(turn) * u(i) - std::sin(turn) * u(i + 1) + 4.0;
                v(i + 1) = std::sin(turn) * u(i) + std::cos(turn) * u(i + 1) - 7.0;
                v(i + 2) = u(i + 2) + turn;
            }
            const ElementStrain after = element_strain(v.data(), length);
            CHECK(std::abs(after.G - before.G) < 1e-13);
            CHECK(std::abs(after.g - before.g) < 1e-13);
            CHECK(std::abs(after.k - before.k) < 1e-13);
        }
    }

}  // TEST_SUITE
