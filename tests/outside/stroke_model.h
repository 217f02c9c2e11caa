// The deck of a strip between a punch and a die, made of the program's own stroke as it is set up: the same
// blank in the same place, the same outlines.
//
// Units  mm, N per mm of width.

#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "scenes/job/run/strip_stroke.h"
#include "tests/outside/slab_deck.h"
#include "tests/outside/stroke_decks.h"

namespace overbend::tests {

// A stroke to be worked out by both.
struct Subject {
    job::StripStroke stroke;
    std::string card;     // of finite_element_cards.h
    double travel = 0.0;  // at which the finite-element punch turns back
    // Where the program's punch turns back, N per mm: a V that is pressed home is compared at equal force,
    // since force runs away with travel; absent: at the same travel.
    std::optional<double> force{};
    bool half = false;  // the deck has the half right of the punch's axis alone
    // Where the deck begins: a strip that tools turn round before they bend it is not held by anything else.
    // From a travel on, the blank's middle and the strip's turn there; at 0 the strip as it is placed.
    double begin = 0.0, begin_turn = 0.0;
    Point begin_middle{};
    std::vector<double> fine{};  // distances from the blank's middle at which the mesh is fine
    double reach = 2.5;          // and so far beside them
    tool::Box punch{}, die{};    // the faces of the tools that are in the deck, the punch at travel 0
};

struct StrokeModel {
    Deck deck;
    Slab strip;
    std::vector<double> blank;  // of the columns, from where the deck's strip begins
    bool half = false;
};

// All of the deck but its steps. Sets: PUNCHNODES, DIENODES, FRONT (the strip's nodes of one plane).
StrokeModel build_deck(const Subject& subject, const DeckMesh& mesh);

// The strip's displacements and the forces on a set of nodes, in each increment; ends the step.
void print_and_end_step(Deck& deck, const std::string& pressed);

// Steps: the punch moved down by `move`, and all tools away.
void press(StrokeModel& model, double move);
void take_away(StrokeModel& model, const std::vector<std::pair<std::string, std::string>>& pairs);

// The step of a whole strip whose middle stays where it is while punch and die are moved apart, the punch by
// `apart` back from `move`, the die by as much down: strip and tools may be too stiff for taking them away at
// once.
void draw_apart(StrokeModel& model, double move, double apart);

// The strip in a printed state; of half a strip, with its other half.
BentShape shape_of(const StrokeModel& model, const PrintedState& state);

}  // namespace overbend::tests
