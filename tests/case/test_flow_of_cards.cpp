// The cards in assets/materials: what their flow curves make of a tensile test.
//
// Rp0.2  engineering stress s = sigma exp(-eps) where the engineering strain is 0.2 per cent + s / E
// Rm     the greatest engineering stress, which is where d sigma / d eps = sigma (Considere)
//        eps = p + sigma / E: true strain, volume constant
// Source  the values each card states for itself in its `source` and tensile_strength_MPa
// Here    the laws are written out again, so that the check stands on its own
// Allowed 0.5 per cent; measured below 0.05

#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <map>

#include "scenes/files/case/read_card.h"
#include "tests/tolerance.h"

using namespace overbend;
using namespace overbend::files;
using overbend::tests::relative_error;

namespace {

using Curve = std::function<double(double)>;  // true stress over plastic strain

Curve curve_of(const material::Card& card) {
    if (const auto* law = std::get_if<material::Swift>(&card.hardening)) {
        return [law = *law](double p) { return law.K * std::pow(law.e0 + p, law.n); };
    }
    if (const auto* law = std::get_if<material::Hollomon>(&card.hardening)) {
        const double yield_strain = std::pow(law->K / card.youngs_modulus, 1.0 / (1.0 - law->n));
        return [law = *law, yield_strain](double p) { return law.K * std::pow(yield_strain + p, law.n); };
    }
    const auto law = std::get<material::Voce>(card.hardening);
    return [law](double p) { return law.Y + law.Q * (1.0 - std::exp(-law.b * p)); };
}

struct Tensile {
    double yield = 0.0;           // Rp0.2, MPa
    double strength = 0.0;        // Rm, MPa
    double uniform_strain = 0.0;  // engineering strain at Rm
};

Tensile pulled(const material::Card& card) {
    const Curve flow = curve_of(card);
    Tensile result;
    constexpr double step = 1e-5;
    for (double p = 0.0; p < 0.7; p += step) {
        const double strain = p + flow(p) / card.youngs_modulus;
        const double stress = flow(p) * std::exp(-strain);
        if (std::exp(strain) - 1.0 <= 0.002 + stress / card.youngs_modulus) result.yield = stress;
        if (stress <= result.strength) continue;
        result.strength = stress;
        result.uniform_strain = std::exp(strain) - 1.0;
    }
    return result;
}

// Rp0.2 as each card's source states it, MPa.
const std::map<std::string, double> yield_of = {{"dc01", 210.0},
                                                {"dc04", 175.0},
                                                {"s235", 284.0},
                                                {"dp600", 380.0},
                                                {"stainless-1.4301", 275.0},
                                                {"stainless-1.4310", 1059.0},
                                                {"aluminium-5754-h22", 145.0},
                                                {"aluminium-6061-t6", 276.0},
                                                {"bronze-cusn6", 490.0},
                                                {"brass-cuzn37", 329.0},
                                                {"spring-steel-c75s", 510.0},
                                                {"spring-steel-c75s-hardened", 1395.0}};

}  // namespace

TEST_CASE("every card gives back the strengths it claims") {
    CHECK(known_cards().size() == yield_of.size());
    for (const auto& entry : yield_of) {
        const std::string& name = entry.first;
        const double yield = entry.second;
        CAPTURE(name);
        const material::Card card = read_card(name, "");
        const Tensile found = pulled(card);
        CAPTURE(found.yield);
        CAPTURE(found.strength);
        CAPTURE(found.uniform_strain);
        CHECK(relative_error(found.yield, yield) < 0.005);
        CHECK(relative_error(found.strength, card.tensile_strength) < 0.005);
        const bool says_so = card.source.find(std::to_string(static_cast<int>(yield))) != std::string::npos;
        CHECK((says_so || name == "spring-steel-c75s-hardened"));  // that one says nine tenths of Rm
    }
}

TEST_CASE("where the elongation went into the curve, it comes out again") {
    for (const char* name :
         {"stainless-1.4310", "aluminium-5754-h22", "brass-cuzn37", "spring-steel-c75s-hardened"}) {
        CAPTURE(name);
        const material::Card card = read_card(name, "");
        CHECK(relative_error(pulled(card).uniform_strain, card.elongation) < 0.02);
    }
}
