// A layer that is sheared: its stresses are the gradient of its energy and its tangents theirs; a section
// that is bent and sheared in proportion carries what the closed form says.
//
// Here    central differences over 2e-7 of hoop and of shear strain, where the layer flows on both sides of
//         the point or on neither. Allowed stresses 1e-6 of the yield stress, tangents 1e-5 of the elastic
//         modulus.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

#include "sim/material/layer_law.h"
#include "sim/material/section.h"
#include "tests/material/bent_before.h"
#include "tests/tolerance.h"

using namespace overbend::material;
using overbend::tests::card_with;
using overbend::tests::relative_error;

namespace {

struct Strained {
    double hoop = 0.0, shear = 0.0;  // shear: its increment
};

LayerHistory after(const LayerLaw& law, const std::vector<Strained>& path) {
    LayerHistory history;
    for (const Strained& s : path) history = advance(law, history, respond(law, history, s.hoop, s.shear));
    return history;
}

const std::vector<std::vector<Strained>> pasts = {
    {}, {{0.0, 0.02}}, {{0.02, 0.03}, {0.05, -0.05}}, {{-0.1, 0.0}, {-0.08, 0.1}, {-0.03, -0.02}}};

struct Worst {
    double stress = 0.0, tangent = 0.0, crossed = 0.0;  // crossed: of hoop stress by shear strain
    int points = 0;
};

Worst compare(const Card& card, double hold) {
    const LayerLaw law(card, hold);
    constexpr double h = 1e-7;
    Worst worst;
    for (const std::vector<Strained>& past : pasts) {
        const LayerHistory was = after(law, past);
        for (const double d : {-0.2, -0.01, -0.0012, 0.0, 0.0007, 0.0031, 0.05})
            for (const double g : {-0.1, -0.003, 0.0, 0.0011, 0.02}) {
                const double e = was.plastic_strain + d;
                const LayerResponse here = respond(law, was, e, g);
                const LayerResponse low = respond(law, was, e - h, g), high = respond(law, was, e + h, g);
                const LayerResponse left = respond(law, was, e, g - h), right = respond(law, was, e, g + h);
                const bool flows = here.flow > 0.0;
                if ((low.flow > 0.0) != flows || (high.flow > 0.0) != flows || (left.flow > 0.0) != flows ||
                    (right.flow > 0.0) != flows)
                    continue;
                ++worst.points;
                const auto slope = [&](double a, double b) { return (b - a) / (2.0 * h); };
                worst.stress = std::max({worst.stress, std::abs(slope(low.energy, high.energy) - here.stress),
                                         std::abs(slope(left.energy, right.energy) - here.shear_stress)});
                worst.crossed =
                    std::max(worst.crossed, std::abs(slope(left.stress, right.stress) - here.cross_tangent));
                worst.tangent =
                    std::max({worst.tangent, std::abs(slope(low.stress, high.stress) - here.tangent),
                              std::abs(slope(low.shear_stress, high.shear_stress) - here.cross_tangent),
                              std::abs(slope(left.shear_stress, right.shear_stress) - here.shear_tangent)});
            }
    }
    worst.stress /= law.curve.first_yield();
    worst.tangent /= law.modulus;
    worst.crossed /= law.modulus;
    return worst;
}

}  // namespace

TEST_SUITE("material") {
    TEST_CASE("a sheared layer's stresses are its energy's gradient, and its tangents theirs") {
        Card everything = card_with(Swift{520.0, 0.006, 0.22}, {8000.0, 0.0});
        everything.modulus_drop = ModulusDrop{160e3, 60.0};
        everything.r_value = 1.8;
        for (const Card& card : {card_with(Swift{520.0, 0.006, 0.22}), card_with(Linear{300.0, 0.0}),
                                 card_with(Voce{276.0, 54.0, 14.0}, {20000.0, 0.0}), everything})
            for (const double hold : {1.0, 0.4}) {
                const Worst worst = compare(card, hold);
                std::printf("sheared layer: stress %.1e, tangent %.1e over %d points\n", worst.stress,
                            worst.tangent, worst.points);
                CHECK(worst.points > 100);
                CHECK(worst.stress < 1e-6);
                CHECK(worst.tangent < 1e-5);
                CHECK(worst.crossed < 1e-5);
            }
    }

    // With a back stress that fades the energy is no exact potential, so hoop stress by shear strain is not
    // shear stress by hoop strain; the tangent has the latter for both. Measured: 0.7 per cent of the
    // elastic modulus between them.
    TEST_CASE(
        "with a fading back stress the tangents of a sheared layer still are the slopes of its stresses") {
        const Worst worst = compare(card_with(Swift{520.0, 0.006, 0.22}, {8000.0, 60.0}), 1.0);
        CHECK(worst.points > 100);
        CHECK(worst.tangent < 1e-5);
        CHECK(worst.crossed < 0.01);
    }

    // By hand: in pure shear von Mises' metal yields at sigma_y/sqrt3; it then carries that.
    TEST_CASE("a layer in pure shear yields at the yield stress over the root of 3") {
        const LayerLaw law(card_with(Linear{300.0, 0.0}));
        const double yield = 300.0 / std::sqrt(3.0), strain = yield / law.shear_modulus;
        CHECK(respond(law, {}, 0.0, strain * (1.0 - 1e-9)).flow == 0.0);
        CHECK(respond(law, {}, 0.0, strain * (1.0 + 1e-6)).flow > 0.0);
        CHECK(relative_error(respond(law, {}, 0.0, 40.0 * strain).shear_stress, yield) < 1e-9);
        CHECK(relative_error(respond(law, {}, 0.0, -40.0 * strain).shear_stress, -yield) < 1e-9);
    }

    // A perfectly plastic section whose layers are strained by de = - z dk and all sheared by dgamma = 2 a
    // dk: von Mises' flow rule at the height z is (s, tau) = S (-z, a/2)/sqrt(z^2 + a^2), S = 2
    // sigma_y/sqrt3, so
    //   M = S (h sqrt(h^2 + a^2) - a^2 asinh(h/a)),   Q = S a asinh(h/a),   h = t/2.
    //
    // Source  worked out here.
    // Allowed 1 per cent; a section as thin-sheared as a = 0.05 mm has a corner that 15 layers miss by 2
    //         per cent, so it has 40. Measured: printed.
    TEST_CASE("a perfectly plastic section that is bent and sheared carries what the closed form says") {
        const LayerLaw law(card_with(Linear{300.0, 0.0}));
        const double S = 2.0 / std::sqrt(3.0) * 300.0, h = 0.5;
        for (const double a : {0.05, 0.1, 0.3, 1.0}) {
            const Layers layers = gauss_layers(1.0, a < 0.1 ? 40 : 15);
            double M = 0.0, Q = 0.0;
            for (std::size_t i = 0; i < layers.height.size(); ++i) {
                const double z = layers.height[i];
                LayerHistory history;
                LayerResponse r;
                constexpr double step = 0.002;  // of the curvature
                for (int j = 1; j <= 200; ++j) {
                    r = respond(law, history, -z * step * j, 2.0 * a * step);
                    history = advance(law, history, r);
                }
                M -= layers.weight[i] * z * r.stress;
                Q += layers.weight[i] * r.shear_stress;
            }
            const double by_hand_M = S * (h * std::sqrt(h * h + a * a) - a * a * std::asinh(h / a));
            const double by_hand_Q = S * a * std::asinh(h / a);
            std::printf("bent and sheared, a = %.2f mm: M %.3f, by hand %.3f; Q %.2f, by hand %.2f\n", a, M,
                        by_hand_M, Q, by_hand_Q);
            CHECK(relative_error(M, by_hand_M) < 0.01);
            CHECK(relative_error(Q, by_hand_Q) < 0.01);
        }
    }

    TEST_CASE("work put into a sheared layer is stored or dissipated") {
        Card card = card_with(Swift{520.0, 0.006, 0.22}, {8000.0, 60.0});
        card.modulus_drop = ModulusDrop{160e3, 60.0};
        const LayerLaw law(card);
        LayerHistory history;
        double work = 0.0, plastic = 0.0, stress = 0.0, width_stress = 0.0, e = 0.0;
        for (const double way : {1.0, -0.6, 0.8})
            for (int i = 0; i < 2000; ++i) {
                const double de = way * 2e-5, dg = way * 3e-5;
                e += de;
                const LayerResponse r = respond(law, history, e, dg);
                work += 0.5 * ((stress + r.stress) * de + (history.shear_stress + r.shear_stress) * dg);
                const LayerHistory was = history;
                history = advance(law, was, r);
                plastic += plastic_work(law, was, stress, width_stress, r, history);
                stress = r.stress, width_stress = r.width_stress;
            }
        const double elastic =
            elastic_energy(law, history.accumulated, stress, width_stress, history.shear_stress);
        CHECK(relative_error(elastic + plastic, work) < 1e-4);
        std::printf("sheared layer: work %.6f, stored and dissipated %.6f\n", work, elastic + plastic);
    }

}  // TEST_SUITE
