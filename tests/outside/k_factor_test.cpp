// K-factors of tables beside the ones that the mechanics gives.
//
// Here    ours is a strip of the row's metal in pure bending to the row's inside radius: the share of the
//         thickness at which the length is that of the blank (k_factor_of). Nothing about it is put in.
// Allowed 0.05, a twelfth of the thickness in the length of a right-angled bend. Rules with steps are looked
//         at in the middle of each step.

#include <doctest/doctest.h>

#include "scenes/files/case/read_card.h"
#include "tests/outside/handbook.h"
#include "tests/outside/simulated_bends.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

double ours(const char* card, double radius_over_thickness) {
    const material::Card metal = files::read_card(card, ".");
    return k_factor_of(bend_round(metal, radius_over_thickness, 1.0), 1.0);
}

void row(const HandbookRow& reference, const char* source, const char* card, double radius_over_thickness) {
    compare({"k-factor of the mechanics", source, reference.id, "k-factor", ""}, reference.number(),
            ours(card, radius_over_thickness), absolute(0.05));
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("k-factors of Machinery's Handbook 26, by radius and thickness") {
        const std::pair<const char*, const char*> metals[] = {{"MH26-K-Al-", "aluminium-5754-h22"},
                                                              {"MH26-K-CRS-", "dc01"},
                                                              {"MH26-K-SS-", "stainless-1.4301"}};
        for (const auto& [beginning, card] : metals)
            for (const HandbookRow& reference : handbook_rows(beginning)) {
                const std::vector<double> of = numbers_in(reference.id.substr(std::string(beginning).size()));
                row(reference, "Machinery's Handbook 26", card, of[0] / of[1]);
            }
    }

    TEST_CASE("k-factors of a Chinese handbook, by the radius at 1 mm") {
        for (const HandbookRow& reference : handbook_rows("CNHB-K-"))
            row(reference, "Chinese handbook", "dc01", numbers_in(reference.id.substr(10))[0]);
    }

    TEST_CASE("k-factors by steps of the radius") {
        row(handbook_row("KS-k1"), "Kalpakjian and Schmid", "dc01", 1.0);
        row(handbook_row("KS-k2"), "Kalpakjian and Schmid", "dc01", 4.0);
        row(handbook_row("SEV-K-sharp"), "lecture notes, Seville", "dc01", 0.1);
        row(handbook_row("SEV-K-middle"), "lecture notes, Seville", "dc01", 2.0);
        row(handbook_row("SEV-K-wide"), "lecture notes, Seville", "dc01", 8.0);
        const std::pair<const char*, const char*> hardness[] = {
            {"soft", "dc04"}, {"medium", "dc01"}, {"hard", "stainless-1.4310"}};
        for (const auto& [word, card] : hardness) {
            const std::string beginning = std::string("ENC-K-") + word + "-";
            row(handbook_row(beginning + "0-1"), "encyclopaedia", card, 0.5);
            row(handbook_row(beginning + "1-3"), "encyclopaedia", card, 2.0);
            row(handbook_row(beginning + "3+"), "encyclopaedia", card, 6.0);
        }
    }

}  // TEST_SUITE
