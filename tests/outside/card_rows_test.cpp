// The cards against the standards' ranges: strength from the card's own flow curve, modulus, elongation.
//
// Here    tensile strength is the greatest engineering stress of the flow curve, where d sigma / d eps =
//         sigma; the cards' sources say what they were made from, so that this shows that they were made
//         right.

#include <doctest/doctest.h>

#include "scenes/files/case/read_card.h"
#include "tests/outside/handbook.h"
#include "tests/outside/simulated_bends.h"

using namespace overbend::tests;
using overbend::files::read_card;

namespace {

About about(const std::string& id, const char* source, const char* quantity, const char* unit) {
    return {"material cards", source, id, quantity, unit};
}

void strength(const char* id, const char* card, double low, double high) {
    // Half a MPa: the cards' constants are rounded.
    compare_band(about(id, "standard", "tensile strength", "MPa"), low - 0.5, high + 0.5,
                 tensile_strength_of_curve(read_card(card, ".")));
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("cards lie in the ranges of their standards") {
        strength("EN10139-DC01-LC", "dc01", 270.0, 410.0);
        strength("EN10130-DC01", "dc01", 270.0, 410.0);
        strength("EN10130-DC04", "dc04", 270.0, 350.0);
        strength("EN10088-1.4301", "stainless-1.4301", 540.0, 750.0);
        strength("EN10025-S235", "s235", 360.0, 510.0);
        strength("EN10336-HCT600X", "dp600", 600.0, 700.0);
        strength("EN10338-HCT590X", "dp600", 590.0, 700.0);
        strength("B209-6061T6", "aluminium-6061-t6", 290.0, 330.0);
        strength("EN485-5754H22", "aluminium-5754-h22", 220.0, 270.0);
        strength("EN10132-C75S", "spring-steel-c75s-hardened", 1200.0, 1900.0);
        strength("EN1652-CuZn37", "brass-cuzn37", 410.0, 490.0);
        strength("EN1652-CuSn6", "bronze-cusn6", 500.0, 590.0);
        compare(about("EN10151-1.4310-E", "EN 10151", "modulus, cold rolled", "GPa"),
                handbook_row("EN10151-1.4310-E").number(),
                read_card("stainless-1.4310", ".").youngs_modulus / 1e3, relative(0.01));
        compare(about("EN10151-1.4310-A", "EN 10151", "elongation at +C1300", "%"),
                handbook_row("EN10151-1.4310-A").number(1),
                100.0 * read_card("stainless-1.4310", ".").elongation, absolute(0.1));
    }

    TEST_CASE("metals without a card") {
        for (const char* id :
             {"EN10139-DC03-LC", "EN10130-DC06", "EN10151-1.4310-E2", "A666-301", "A666-301y", "EN10025-S355",
              "EN10338-HCT780X", "B209-5052H32", "EN1652-CuSn8", "CuBe2-A", "CuBe2-HT"})
            no_counterpart(about(id, "standard", "strength", "MPa"), "no card of this metal or temper");
        no_counterpart(
            about("YU-SPCC", "Yoshida and Uemori 2003", "constants", ""),
            "a two-surface law of hardening; cards have up to two back stresses beside the flow curve");
    }

}  // TEST_SUITE
