// Guess the angle: what a class thinks will stay of a bend, before it is shown. Plain data; degrees.

#pragma once

#include <random>
#include <string>
#include <vector>

#include "scenes/window/bench/setup.h"

namespace overbend::window {

struct Guess {
    std::string who;  // may be empty
    double angle = 0.0;
};

enum class GuessStage {
    off,
    guessing,  // the free angle is not shown anywhere
    shown
};

struct GuessGame {
    GuessStage stage = GuessStage::off;
    int round = 0;
    std::vector<Guess> guesses;
};

// "88.5", "Ann 88.5", "Ann: 88,5": nothing where there is no angle from 0 to 180 at its end.
bool add_guess(GuessGame& game, const std::string& typed);

// Off by how much, from the nearest to the one furthest off; equals stay in their order.
struct Judged {
    Guess guess;
    double off = 0.0;  // guessed less true
};
std::vector<Judged> judged(const GuessGame& game, double angle);

// Another metal and way, at random: new to the class.
struct Round {
    std::string card;
    double way = 0.0;  // part of the deepest
};
Round next_round(std::mt19937& chance, const std::vector<std::string>& cards, const std::string& last);

}  // namespace overbend::window
