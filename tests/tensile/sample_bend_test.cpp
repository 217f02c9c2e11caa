// A sample bend with each law: what they differ is stated.

#include <doctest/doctest.h>

#include "scenes/job/coil/sample_bend.h"
#include "sim/units.h"
#include "tests/tensile/synthetic.h"

using namespace overbend;
using overbend::tests::synthetic_record;
using overbend::tests::SyntheticTest;

TEST_CASE("sample bend: of each law, and the spread between those that follow the record alike") {
    SyntheticTest t;
    t.modulus = 70e3;
    t.law = material::Voce{300.0, 60.0, 12.0};
    t.scatter = 0.5;
    const tensile::Coil coil =
        tensile::read_coil({tensile::prepare(synthetic_record(t))}, tensile::Nominal{70e3, "aluminium", ""});
    material::Card card;
    card.youngs_modulus = 70e3, card.poisson = 0.33, card.density = 2700.0;
    card.hardening = coil.fits[2].hardening;
    const auto bends = job::bend_samples(card, coil.fits, 1.0);
    REQUIRE(bends.size() == coil.fits.size());
    for (const job::SampleBend& b : bends) {
        CAPTURE(tensile::law_word(b.law));
        CHECK(b.solved);
        CHECK(b.springback > 2.0 * degree);
        CHECK(b.springback < 10.0 * degree);
        CHECK(b.outer_strain > 0.2);
    }
    const job::LawSpread spread = job::springback_spread(bends, coil.fits, coil.fits[2]);
    CHECK(spread.laws >= 2);
    CHECK(spread.most >= spread.least);
    // The table stays at its last stress: it springs back least but for laws that begin below it.
    CHECK(bends[5].springback <= bends[2].springback + 0.05 * degree);
    CHECK_THROWS(job::bend_samples(card, coil.fits, -1.0));
}
