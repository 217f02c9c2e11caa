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
#include <cstdio>
#include <functional>
#include <map>

#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/read_card.h"
#include "scenes/files/case/strict_table.h"
#include "scenes/files/case/toml_file.h"
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
                                                {"stainless-1.4310", 1190.0},
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

// Every number of a card names its source; what the trade pays and how fast it cuts is the middle of a range.
TEST_CASE("every number of a card has a source") {
    for (const std::string& name : known_cards()) {
        CAPTURE(name);
        const TomlFile file = read_toml(file_of(name, "", material_cards));
        const CardTable given = read_card_table(StrictTable(file), name);
        const material::Card& card = given.card;
        std::map<std::string, std::string> sources(given.sources.begin(), given.sources.end());
        for (const char* key :
             {"youngs_modulus_MPa", "poisson", "density_kg_m3", "hardening", "tensile_strength_MPa",
              "elongation_percent", "hardness", "price_per_kg", "cutting_mm2_per_s"})
            CHECK_MESSAGE(sources.count(key) == 1, key);
        CHECK((sources.count("r_value") == 1) == (card.r_value != 1.0));
        CHECK((sources.count("reduction_of_area_percent") == 1) == (card.reduction_of_area > 0.0));
        const std::pair<const char*, double> trade[] = {{"price_per_kg", card.price},
                                                        {"cutting_mm2_per_s", card.cutting_rate}};
        for (const auto& [key, value] : trade) {
            CAPTURE(std::string(key));
            double low = 0.0, high = 0.0;
            REQUIRE(std::sscanf(sources[key].c_str(), "common practice, no source: %lf to %lf", &low,
                                &high) == 2);
            CHECK(value == doctest::Approx(0.5 * (low + high)));
        }
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
