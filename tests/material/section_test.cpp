// A section: N and M are the gradient of its potential, the tangents that of N and M, by differences; with
// and without a history of bends to and fro.
//
// Here    central differences over 2e-6 of stretch and of curvature times thickness.
// Allowed N, M 1e-5 of the yield force and moment, tangents 1e-3 of the elastic ones (a layer that begins to
//         flow within the difference puts its share on the latter). Measured: printed.

#include "sim/material/section.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numeric>
#include <vector>

#include "sim/errors.h"
#include "tests/material/bent_before.h"
#include "tests/tolerance.h"

using namespace overbend::material;
using overbend::tests::card_with;
using overbend::tests::relative_error;

namespace {

constexpr double thickness = 1.5;
constexpr int count = 15;

// A section with its own memory.
struct Section {
    explicit Section(const Card& card) : law(card) {}
    LayerLaw law;
    SectionShape shape{gauss_layers(thickness, count)};
    std::vector<LayerHistory> history = std::vector<LayerHistory>(count);
    std::vector<double> stress = std::vector<double>(count, 0.0), width_stress = stress;

    SectionResponse at(double G, double k) {
        return respond(law, shape, history.data(), SectionStrain(G, k, 0.0, 0.0));
    }
    double bend(double G, double k) {
        return advance(law, shape, history.data(), stress.data(), width_stress.data(),
                       SectionStrain(G, k, 0.0, 0.0));
    }
};

struct Worst {
    double force = 0.0, tangent = 0.0;
};

Worst compare(const Card& card, const std::vector<std::vector<double>>& past) {
    Section s(card);
    for (const std::vector<double>& p : past) s.bend(p[0], p[1]);
    const double h = 1e-6, hk = h / thickness;
    const double N0 = s.law.plane_strain_yield() * thickness, M0 = N0 * thickness / 4.0;
    const double A = s.law.modulus * thickness, B = A * thickness / 2.0, C = A * thickness * thickness / 12.0;
    Worst worst;
    for (const double G : {0.98, 1.0, 1.0013, 1.03})
        for (const double k : {-0.3, -0.02, -0.001, 0.0, 0.0031, 0.05, 0.2, 0.4}) {
            const SectionResponse r = s.at(G, k), g1 = s.at(G - h, k), g2 = s.at(G + h, k),
                                  k1 = s.at(G, k - hk), k2 = s.at(G, k + hk);
            worst.force = std::max({worst.force, std::abs((g2.energy - g1.energy) / (2 * h) - r.N) / N0,
                                    std::abs((k2.energy - k1.energy) / (2 * hk) - r.M) / M0});
            worst.tangent = std::max({worst.tangent, std::abs((g2.N - g1.N) / (2 * h) - r.N_G) / A,
                                      std::abs((k2.N - k1.N) / (2 * hk) - r.N_k) / B,
                                      std::abs((g2.M - g1.M) / (2 * h) - r.N_k) / B,
                                      std::abs((k2.M - k1.M) / (2 * hk) - r.M_k) / C});
        }
    return worst;
}

const std::vector<std::vector<double>> to_and_fro = {
    {1.0, 0.05}, {1.002, 0.15}, {1.004, 0.2}, {1.003, 0.1}, {1.001, -0.05}};

}  // namespace

TEST_SUITE("material") {
    TEST_CASE("the layers are a Gauss rule") {
        const Layers layers = gauss_layers(2.0, 11);
        CHECK(relative_error(std::accumulate(layers.weight.begin(), layers.weight.end(), 0.0), 2.0) < 1e-13);
        double fourth = 0.0;
        for (int i = 0; i < 11; ++i) fourth += layers.weight[i] * std::pow(layers.height[i], 4);
        CHECK(relative_error(fourth, 2.0 / 5.0) < 1e-13);
        CHECK(layers.height.front() == -layers.height.back());
        CHECK_THROWS_AS(gauss_layers(1.0, 2), overbend::OutOfRange);
        CHECK_THROWS_AS(gauss_layers(1.0, 65), overbend::OutOfRange);
    }

    TEST_CASE("a section's force and moment are its energy's gradient, and its tangents theirs") {
        for (const Card& card : {card_with(Swift{520.0, 0.006, 0.22}), card_with(Linear{300.0, 0.0}),
                                 card_with(Swift{520.0, 0.006, 0.22}, {4000.0, 0.0})})
            for (const bool bent : {false, true}) {
                const Worst worst = compare(card, bent ? to_and_fro : std::vector<std::vector<double>>{});
                std::printf("section: force %.1e, tangent %.1e\n", worst.force, worst.tangent);
                CHECK(worst.force < 1e-5);
                CHECK(worst.tangent < 1e-3);
            }
    }

    TEST_CASE("with a fading back stress the tangents still are the slopes of force and moment") {
        const Worst worst = compare(card_with(Swift{520.0, 0.006, 0.22}, {8000.0, 60.0}), to_and_fro);
        std::printf("section, fading back stress: tangent %.1e\n", worst.tangent);
        CHECK(worst.tangent < 1e-3);
    }

    TEST_CASE("a released section carries no load") {
        Section s(card_with(Swift{520.0, 0.006, 0.22}));
        for (const std::vector<double>& p : to_and_fro) s.bend(p[0], p[1]);
        const FreeSection free = release(s.law, s.shape, s.history.data(), {1.001, -0.05, 0.0, 0.0}, nullptr);
        REQUIRE(free.solved);
        const SectionResponse r = s.at(free.G, free.k);
        const double N0 = s.law.plane_strain_yield() * thickness;
        CHECK(std::abs(r.N) < 1e-8 * N0);
        CHECK(std::abs(r.M) < 1e-8 * N0 * thickness);
        CHECK(free.k > -0.05);  // it springs back
    }

    TEST_CASE("work put into a section is stored or dissipated") {
        // Trapezoidal rule over fine steps, bent, bent back and bent again; allowed 1e-4, as fine as the
        // steps are.
        Card everything = card_with(Swift{520.0, 0.006, 0.22});
        everything.backstress = {{8000.0, 60.0}, {30000.0, 500.0}};
        everything.modulus_drop = ModulusDrop{160e3, 60.0};
        for (const Card& card : {card_with(Swift{520.0, 0.006, 0.22}), everything}) {
            Section s(card);
            double work = 0.0, plastic = 0.0, G = 1.0, k = 0.0;
            SectionResponse was = s.at(G, k);
            const int steps = 2000;
            for (const double way : {1.0, -0.5, 0.7})
                for (int i = 1; i <= steps; ++i) {
                    const double dG = way * 0.01 / steps, dk = way * 0.3 / steps;
                    G += dG, k += dk;
                    const SectionResponse now = s.at(G, k);
                    work += 0.5 * (was.N + now.N) * dG + 0.5 * (was.M + now.M) * dk;
                    plastic += s.bend(G, k);
                    was = now;
                }
            const double elastic =
                elastic_energy(s.law, s.shape, s.history.data(), s.stress.data(), s.width_stress.data());
            CHECK(relative_error(elastic + plastic, work) < 1e-4);
            std::printf("section: work %.6f, stored and dissipated %.6f\n", work, elastic + plastic);
        }
    }

    TEST_CASE("a folded section is told") {
        Section s(card_with(Linear{300.0, 0.0}));
        CHECK(s.at(1.0, 1.0).folded);
        CHECK_FALSE(s.at(1.0, 0.3).folded);
    }

}  // TEST_SUITE
