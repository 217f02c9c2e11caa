// Pure bending at large strain against finite elements, computed while the checks run: anybody who doubts the
// stored rows sees these made.
//
// Source  CalculiX, a general-purpose finite-element solver (Debian's calculix-ccx), on the deck of
//         pure_bending_deck.h: 24 x 16 CPE8R over three thicknesses, NLGEOM, *PLASTIC.
// Here    the metals A1, A3, A4 of finite_element_cards.h, bent to r/t of 5 in 40 increments, and released.
//         Our moment and thickness stand at the curvature that the circles through the nodes show. A1 is bent
//         on 12 x 8 elements as well, which says how much of a difference is the mesh's.
// Allowed moment 0.6 per cent; free curvature 0.5 per cent or 5e-5 per mm; thickness ratio 0.002.
//
// Without `ccx` the check fails: what it should show is not shown.

#include <doctest/doctest.h>

#include <atomic>
#include <exception>
#include <string>
#include <thread>
#include <vector>

#include "sim/material/pure_bending.h"
#include "tests/outside/finite_element_cards.h"
#include "tests/outside/pure_bending_deck.h"
#include "tests/outside/table.h"

using namespace overbend::material;
using namespace overbend::tests;

namespace {

struct Subject {
    std::string card;
    PureBendingDeck deck;
    PureBendingRun run;
    std::string failed;
};

BendingPoint ours(const Card& card, double curvature) {
    std::vector<double> path;
    const int steps = static_cast<int>(curvature / 0.001) + 1;
    for (int i = 1; i <= steps; ++i) path.push_back(curvature * i / steps);
    return bend_in_pure_moment(card, 1.0, path, 41).back();
}

Subject subject(const char* card, int columns, int rows) {
    Subject s;
    s.card = card;
    s.deck.card = finite_element_card(card);
    s.deck.columns = columns, s.deck.rows = rows;
    s.deck.free_guess = ours(s.deck.card, s.deck.curvature).free_curvature;
    return s;
}

// Two at a time: the machines that check have two cores.
void run_all(std::vector<Subject>& subjects) {
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        for (std::size_t i = next++; i < subjects.size(); i = next++) {
            try {
                subjects[i].run = run_pure_bending_deck(subjects[i].deck);
            } catch (const std::exception& e) {
                subjects[i].failed = e.what();
            }
        }
    };
    std::thread other(work);
    work();
    other.join();
}

void compare_all(const Subject& s, const std::string& mesh) {
    const auto about = [&](const std::string& name, const char* quantity, const char* unit) {
        return About{"pure bending, live" + mesh, "CalculiX, now", name, quantity, unit};
    };
    // Each tenth increment: r/t of about 20, 10, 7 and 5.
    const std::vector<PureBendingState>& loading = s.run.loading;
    for (std::size_t quarter = 1; quarter <= 4; ++quarter) {
        const PureBendingState& state = loading[quarter * loading.size() / 4 - 1];
        const BendingPoint p = ours(s.deck.card, state.curvature);
        const std::string name = s.card + mesh + " live, state " + std::to_string(quarter) + " of 4";
        compare(about(name, "moment", "N mm/mm"), state.moment, p.moment, relative(0.006));
        compare(about(name, "thickness over first", ""), state.thickness, p.thickness, absolute(0.002));
    }
    const BendingPoint last = ours(s.deck.card, loading.back().curvature);
    compare(about(s.card + mesh + " live, released", "free curvature", "1/mm"), s.run.free_curvature,
            last.free_curvature, larger_of(5e-5, 0.005));
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("pure bending agrees with finite elements that are computed now") {
        std::vector<Subject> subjects = {subject("A1", 24, 16), subject("A3", 24, 16), subject("A4", 24, 16),
                                         subject("A1", 12, 8)};
        run_all(subjects);
        for (const Subject& s : subjects) {
            CAPTURE(s.card);
            REQUIRE_MESSAGE(s.failed.empty(), s.failed);
            compare_all(s, s.deck.columns == 12 ? ", coarse" : "");
        }
    }

}  // TEST_SUITE
