// V air bends by the slow deck of vee_deck.h, which is run by hand and whose results are stored.
//
// Source  CalculiX 2.20, a general-purpose finite-element solver (Debian's calculix-ccx); vee_deck.csv.
// Allowed see vee_rows.h.

#include <doctest/doctest.h>

#include "tests/outside/vee_deck_file.h"
#include "tests/outside/vee_rows.h"

using namespace overbend::tests;

TEST_SUITE("outside") {
    TEST_CASE("V bends agree with a deck that anybody can run") {
        REQUIRE_FALSE(stored_vee_decks().empty());
        for (const auto& [bend, stored] : stored_vee_decks())
            compare_vee_bend("V bend, deck of ours", "CalculiX 2.20, by hand", bend, stored,
                             stored.included_free - stored.included_loaded);
    }

}  // TEST_SUITE
