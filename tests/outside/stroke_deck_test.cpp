// Whole strokes other than air bends against finite elements: an offset made in one stroke, a V pressed home,
// a hem closed between flat tools.
//
// Source  CalculiX 2.20, a general-purpose finite-element solver (Debian's calculix-ccx), by the decks of
//         stroke_decks.h, which are run by hand: test_outside --run-stroke-decks. Their figures are stored in
//         stroke_decks.csv, on two meshes: the finer one is compared, the coarser one shows what the mesh
//         does.
//         Its own uncertainty: between the meshes turn 0.1 degree (before the hem is closed 0.5), springback
//         0.02, thickness 0.003, curvature, outer strain and radius over half a thickness 3 per cent (the
//         radius of the hem's fold 14), force 4. The V with contact five times as stiff, on the coarser mesh:
//         curvature 3 per cent less, springback 0.014 degree more, the stop's force 0.003 mm earlier.
// Here    the same blank, tools, friction and metal (A1 of finite_element_cards.h); what comes of either is
//         measured by the same functions. The V is compared at equal force, the others at equal travel.
// Allowed turn 0.7 degree, springback 0.15 degree or 6 per cent, force 5 per cent, curvature and outer strain
//         8, radius over half a thickness 12, thickness 0.008 mm, offset height and travel 0.02 mm, gaps of
//         the hem 0.05 mm.
//
// test_outside -tc="whole strokes*" runs these alone, and prints their table.

#include <doctest/doctest.h>

#include <exception>
#include <stdexcept>

#include "tests/on_all_cores.h"
#include "tests/outside/stroke_deck_file.h"
#include "tests/outside/stroke_decks.h"
#include "tests/outside/table.h"

using namespace overbend::tests;

namespace {

Tolerance stroke_tolerance(const std::string& quantity) {
    const auto begins = [&](const char* words) { return quantity.rfind(words, 0) == 0; };
    if (begins("turn")) return absolute(0.7);
    if (begins("springback")) return larger_of(0.15, 0.06);
    if (begins("force") || begins("end force")) return relative(0.05);
    if (begins("curvature") || begins("outer strain")) return relative(0.08);
    if (begins("radius")) return relative(0.12);
    if (begins("thickness")) return absolute(0.008);
    if (begins("gap")) return absolute(0.05);
    if (begins("offset height") || begins("travel")) return absolute(0.02);
    throw std::invalid_argument("no tolerance for " + quantity);
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("whole strokes agree with finite elements") {
        const std::vector<std::string>& names = stroke_decks();
        std::vector<StrokeRun> here(names.size());
        std::vector<std::string> failed(names.size());
        on_all_cores(static_cast<int>(names.size()), [&](int i) {
            try {
                here[i] = stroke_here(names[i]);
            } catch (const std::exception& e) {
                failed[i] = e.what();
            }
        });
        std::size_t all = 0;
        for (std::size_t i = 0; i < names.size(); ++i) {
            CAPTURE(names[i]);
            CHECK_MESSAGE(failed[i].empty(), failed[i]);
            if (!failed[i].empty()) continue;
            const auto ours = stroke_figures(names[i], here[i]);
            std::size_t compared = 0;
            for (const ShapeRow& row : stored_stroke_decks()) {
                if (row.name != names[i]) continue;
                compare(
                    {"strokes, decks of ours", "CalculiX 2.20, by hand", row.name, row.quantity, row.unit},
                    row.reference, ours.at(row.quantity), stroke_tolerance(row.quantity));
                ++compared;
            }
            CHECK(compared == ours.size());
            all += compared;
        }
        CHECK(all == stored_stroke_decks().size());
    }

}  // TEST_SUITE
