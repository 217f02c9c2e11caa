// Pure bending of metals with Hollomon's law K e^n against the closed form of textbooks.
//
//   M = K' T^(n+2) k^n / ((n+2) 2^(n+1)),  K' = K (2/sqrt3)^(n+1),  k_free = k - 12 M/(E' T^3)
//
// Source  W. F. Hosford & R. M. Caddell, Metal Forming (from memory); the metals' K and n: S. Kalpakjian & S.
//         R. Schmid, Manufacturing Engineering and Technology, table 2.3 (from memory; handbook.csv).
// Here    nu is nearly 0.5, so that elastic strain keeps the volume as plastic strain does, as the formula
//         has it; surface strains of 2.5 per cent, small against 1. Moduli of the metal's kind, from memory.
// Allowed 2 per cent in the moment, 5 per cent in what springs back.

#include <doctest/doctest.h>

#include <cmath>
#include <map>

#include "tests/outside/handbook.h"
#include "tests/outside/simulated_bends.h"

using namespace overbend::material;
using namespace overbend::tests;

namespace {

double modulus_of(const std::string& id) {
    if (id.find("steel") != std::string::npos) return 206e3;
    if (id.find("stainless") != std::string::npos) return 195e3;
    if (id.find("copper") != std::string::npos) return 120e3;
    if (id.find("brass") != std::string::npos || id.find("bronze") != std::string::npos) return 110e3;
    return 70e3;
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("power-law metals in pure bending follow the closed form") {
        const double T = 1.0, k = 0.05;
        for (const HandbookRow& row : handbook_rows("KS-Kn-")) {
            CAPTURE(row.id);
            const double K = row.number(0), n = row.number(1);
            Card card = perfectly_plastic_card(modulus_of(row.id), 0.4999, 1.0);
            card.hardening = Hollomon{K, n};
            const double plane = K * std::pow(2.0 / std::sqrt(3.0), n + 1.0);
            const double moment =
                plane * std::pow(T, n + 2.0) * std::pow(k, n) / ((n + 2.0) * std::pow(2.0, n + 1.0));
            const double sprung =
                12.0 * moment * (1.0 - card.poisson * card.poisson) / (card.youngs_modulus * T * T * T);
            const BendingPoint p = bend_to_curvature(card, k, T);
            const auto about = [&](const char* quantity, const char* unit) {
                return About{"power law", "Hosford and Caddell", row.id, quantity, unit};
            };
            compare(about("moment", "N mm/mm"), moment, p.moment, relative(0.02));
            compare(about("curvature that springs back", "1/mm"), sprung, k - p.free_curvature,
                    relative(0.05));
        }
    }

}  // TEST_SUITE
