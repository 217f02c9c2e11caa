// The stored results of the slow deck: tests/outside/vee_deck.csv.

#pragma once

#include <utility>
#include <vector>

#include "tests/outside/vee_deck.h"

namespace overbend::tests {

std::vector<std::pair<VeeDeckBend, VeeDeckResult>> stored_vee_decks();

// Works every bend of the file out again with finite elements, and writes the file: the command behind it.
void run_and_store_vee_deck();

}  // namespace overbend::tests
