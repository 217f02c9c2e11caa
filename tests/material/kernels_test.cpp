// The kernels, which work on four layers at a time, against the law and the section of one layer, on random
// input; and that every instruction set gives the same bytes.
//
// Allowed 1e-9 of the yield stress, 1e-6 of the elastic modulus (a flow is found to 1e-11 of the yield
// stress). Measured: printed.

#include "sim/material/kernels.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <vector>

#include "sim/material/layer_law.h"
#include "sim/material/section_shape.h"
#include "tests/material/bent_before.h"
#include "tests/material/four_layers.h"

using namespace overbend;
using namespace overbend::material;
using overbend::tests::card_with;
using overbend::tests::FourAnswers;

namespace {

class Random {
  public:
    double between(double low, double high) {
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return low + (high - low) * static_cast<double>(state_ >> 11) / 9007199254740992.0;
    }

  private:
    unsigned long long state_ = 20240301;
};

std::vector<Card> cards() {
    std::vector<Card> all = {card_with(Swift{520.0, 0.006, 0.22}),
                             card_with(Hollomon{600.0, 0.2}),
                             card_with(Voce{200.0, 150.0, 12.0}),
                             card_with(Linear{300.0, 0.0}),
                             card_with(Linear{300.0, 900.0}),
                             card_with(Table{{0.0, 0.05, 0.2}, {200.0, 300.0, 350.0}}),
                             card_with(Swift{520.0, 0.006, 0.22}, {3000.0, 30.0})};
    all.push_back(all.back());
    all.back().backstress.push_back({20000.0, 200.0});
    all.back().modulus_drop = ModulusDrop{163e3, 60.0};
    all.back().r_value = 1.7;
    return all;
}

LayerHistory random_past(const LayerLaw& law, Random& random) {
    LayerHistory history;
    double hoop = 0.0;
    for (int i = static_cast<int>(random.between(0.0, 4.0)); i > 0; --i) {
        hoop += random.between(-0.05, 0.05);
        history = advance(law, history, respond(law, history, hoop, random.between(-0.03, 0.03)));
    }
    return history;
}

struct Worst {
    double stress = 0.0, tangent = 0.0, flow = 0.0, energy = 0.0;
    int flowing = 0;
};

}  // namespace

TEST_SUITE("material") {
    TEST_CASE("four layers answer as each of them does alone, and the same on every instruction set") {
        Random random;
        for (const Card& card : cards()) {
            const LayerLaw law(card);
            const LaneLaw lanes_of = lane_law(law);
            Worst worst;
            for (int round = 0; round < 400; ++round) {
                LayerStart start[4];
                double hoop[2][4], shear[2][4], rows[law_rows * 4] = {}, others[law_rows * 4];
                for (int i = 0; i < 4; ++i) {
                    const LayerHistory history = random_past(law, random);
                    start[i] = start_of(law, history);
                    store_start(law, start[i], rows + i, 4);
                    const double size = std::pow(10.0, random.between(-5.0, -1.0));
                    hoop[0][i] = history.plastic_strain + random.between(-size, size);
                    shear[0][i] = random.between(-size, size);
                    hoop[1][i] = hoop[0][i] * random.between(0.99, 1.01);
                    shear[1][i] = shear[0][i] + random.between(-1e-3, 1e-3);
                }
                std::memcpy(others, rows, sizeof rows);
                for (int step = 0; step < 2; ++step) {
                    const FourAnswers a = tests::four_layers_sse2(lanes_of, rows, hoop[step], shear[step]);
                    if (has_avx2()) {
                        const FourAnswers b =
                            tests::four_layers_avx2(lanes_of, others, hoop[step], shear[step]);
                        CHECK(std::memcmp(&a, &b, sizeof a) == 0);
                        CHECK(std::memcmp(rows, others, sizeof rows) == 0);
                    }
                    for (int i = 0; i < 4; ++i) {
                        const LayerResponse r =
                            respond(law, start[i], hoop[step][i], shear[step][i], rows[4 * flow + i]);
                        const auto off = [&](int row, double wanted) {
                            return std::abs(rows[4 * row + i] - wanted);
                        };
                        const double yield = start[i].yield, modulus = law.modulus;
                        worst.stress = std::max({worst.stress, off(hoop_stress, r.stress) / yield,
                                                 off(width_stress, r.width_stress) / yield,
                                                 off(shear_stress, r.shear_stress) / yield});
                        worst.tangent = std::max({worst.tangent, std::abs(a.tangent[i] - r.tangent) / modulus,
                                                  std::abs(a.cross_tangent[i] - r.cross_tangent) / modulus,
                                                  std::abs(a.shear_tangent[i] - r.shear_tangent) / modulus});
                        worst.energy = std::max(worst.energy, std::abs(a.energy[i] - r.energy) / yield);
                        worst.flow = std::max(worst.flow, off(flow, r.flow));
                        CHECK((rows[4 * flow + i] > 0.0) == (r.flow > 0.0));
                        if (!(r.flow > 0.0)) continue;
                        ++worst.flowing;
                        worst.flow = std::max({worst.flow, off(flow_a, r.flow_a), off(flow_b, r.flow_b),
                                               off(flow_c, r.flow_c)});
                    }
                }
            }
            std::printf(
                "four layers: stress %.1e, tangent %.1e, energy %.1e, flow %.1e off; %d of 3200 flow\n",
                worst.stress, worst.tangent, worst.energy, worst.flow, worst.flowing);
            CHECK(worst.flowing > 800);
            CHECK(worst.stress < 1e-9);
            CHECK(worst.energy < 1e-9);
            CHECK(worst.flow < 1e-9);
            CHECK(worst.tangent < 1e-6);
        }
    }

    TEST_CASE("sections have the same bytes on every instruction set, and their layers' stretches") {
        if (!has_avx2()) return;
        Random random;
        for (const int layers : {3, 11, 16}) {
            const double t = 1.3;
            const SectionShape shape(gauss_layers(t, layers));
            int sections = 0;
            for (int round = 0; round < 300; ++round) {
                const SectionStrain E(random.between(0.95, 1.2), random.between(-1.0, 1.0) / t,
                                      random.between(-0.1, 0.1), random.between(-0.1, 0.1));
                PointSquares a, b;
                const HeldSection at = shape.held(E);
                const bool stands = section_kernels_sse2().squares(at, shape.places(), a);
                CHECK(section_kernels_avx2().squares(at, shape.places(), b) == stands);
                if (!stands) continue;
                ++sections;
                CHECK(std::memcmp(a.value, b.value, sizeof a.value) == 0);
                CHECK(std::memcmp(a.by, b.by, sizeof a.by) == 0);
                HeightRows heights_a{}, heights_b{};
                section_kernels_sse2().heights(at, shape.places(), a, heights_a);
                section_kernels_avx2().heights(at, shape.places(), a, heights_b);
                CHECK(std::memcmp(&heights_a, &heights_b, sizeof heights_a) == 0);
                double share[most_layers] = {}, curve_a[16], curve_b[16];
                for (int i = 0; i < layers; ++i) share[i] = random.between(-1.0, 1.0);
                const int count = shape.padded_layers();
                section_kernels_sse2().height_curvature(at, shape.places(), a, 0, count, share, curve_a);
                section_kernels_avx2().height_curvature(at, shape.places(), a, 0, count, share, curve_b);
                CHECK(std::memcmp(curve_a, curve_b, sizeof curve_a) == 0);
            }
            CHECK(sections > 100);
        }
    }

}  // TEST_SUITE
