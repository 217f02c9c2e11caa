// V air bends by the slow deck of vee_deck.h, which is run by hand and whose results are stored.
//
// Source  CalculiX 2.20, a general-purpose finite-element solver (Debian's calculix-ccx); vee_deck.csv.
// Allowed as for the ten bends of vee_finite_element_test.cpp.

#include <doctest/doctest.h>

#include "scenes/process/vee_bend.h"
#include "tests/outside/finite_element_cards.h"
#include "tests/outside/table.h"
#include "tests/outside/vee_deck_file.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

scenes::VeeResult bend(const VeeDeckBend& b) {
    scenes::VeeBend vee;
    vee.material = finite_element_card(b.card);
    vee.thickness = b.thickness;
    vee.die_opening = b.die_opening;
    vee.shoulder_radius = b.shoulder_radius;
    vee.nose_radius = b.nose_radius;
    vee.friction = b.friction;
    vee.flange = 0.8 * b.die_opening + 0.5 * b.thickness;
    stroke::Stop stop;
    stop.kind = stroke::StopKind::travel;
    stop.value = b.travel;
    return scenes::bend_vee(vee, stop, {});
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("V bends agree with a deck that whoever doubts them can run") {
        constexpr double degree = 3.14159265358979323846 / 180.0;
        REQUIRE_FALSE(stored_vee_decks().empty());
        for (const auto& [b, stored] : stored_vee_decks()) {
            const std::string name = b.name;
            CAPTURE(name);
            const scenes::VeeResult r = bend(b);
            REQUIRE(r.stroke.outcome == stroke::Outcome::reached);
            const auto about = [&](const char* quantity, const char* unit) {
                return About{"V bend, deck of ours", "CalculiX 2.20, by hand", name, quantity, unit};
            };
            compare(about("springback", "deg"), stored.included_free - stored.included_loaded,
                    (r.loaded - r.free) / degree, larger_of(0.15, 0.06), larger_of(0.1, 0.03));
            compare(about("included angle under load", "deg"), stored.included_loaded,
                    180.0 - r.loaded / degree, absolute(2.2), absolute(0.7));
            compare(about("included angle free", "deg"), stored.included_free, 180.0 - r.free / degree,
                    absolute(2.2), absolute(0.7));
            compare(about("peak force", "N/mm"), stored.peak_force, r.stroke.peak_force, relative(0.06),
                    relative(0.03));
            compare(about("end force", "N/mm"), stored.end_force, r.stroke.stop_force, relative(0.06),
                    relative(0.03));
        }
    }

}  // TEST_SUITE
