// What a user has chosen on the bench, and what controls do to it; no window: plain data, free functions.
//
// Units  mm, MPa, 1/mm; degrees where people type them.

#pragma once

#include <string>
#include <vector>

#include "scenes/window/bench/guess.h"
#include "scenes/window/bench/work.h"
#include "scenes/window/shared/remembered.h"

namespace overbend::window {

enum class BenchPhase { pressed, springing_back, free };

struct BenchState {
    BenchSetup setup;
    int metal = 0;     // whose figures the sliders show
    double way = 0.0;  // of the punch now, mm; or the curvature, 1/mm
    // Where it turned since there is this strip, and where it is now; never empty.
    std::vector<BenchMove> moves{BenchMove()};
    double depth = 0.0;  // way of the last press, as far as it went
    BenchPhase phase = BenchPhase::pressed;
    double seconds = 0.0;      // since release
    double raised_from = 0.0;  // way at release

    GuessGame game;
    std::string typed;        // a guess that is being typed
    std::string typed_wrong;  // in words, why it was not taken
    std::mt19937 chance{std::random_device()()};

    double wanted = 90.0;  // degrees, free
};

constexpr SliderRange wanted_angles{1.0, 170.0};  // degrees
constexpr double spring_seconds = 1.6;            // of the way back, so that it is seen
constexpr std::size_t most_moves = 60;            // of one strip: all of them are followed for each picture

// As it was left: what is out of its range, or of a card that is gone, is as at the beginning.
BenchState begin_bench(const RememberedBench& left);
void remember(const BenchState& state, RememberedBench& left);
BenchMetal& chosen(BenchState& state);

void take_kind(BenchState& state, BenchKind kind);  // as far of the way as before
void take_card(BenchState& state, const std::string& card);
void add_metal(BenchState& state, const std::vector<std::string>& cards);  // one that is not there yet
void remove_metal(BenchState& state);
void next_metal(BenchState& state);  // that the sliders show
void reset(BenchState& state);       // figures, tools and way as at the beginning; metals by their cards

// The punch goes there, down or up, held within what the tools have room for. While a class guesses, not up.
void press_to(BenchState& state, double way);
void new_strip(BenchState& state);               // a flat one, pressed once as far as the last one was
void press_flat(BenchState& state, double way);  // a flat one, so far
// What is set up has changed: a new strip goes through the last press, and is released if the last one was.
void renew_strip(BenchState& state);
void press_again(BenchState& state);  // the same strip, as far as before
bool worn(const BenchState& state);   // it has turned as often as can be followed
void release(BenchState& state);      // not while a class still guesses
void advance(BenchState& state, double seconds);
double released_part(const BenchState& state);  // of the moment in pure bending: 0 pressed to 1 free

void begin_game(BenchState& state);
void end_game(BenchState& state);
void take_guess(BenchState& state);
void show_angle(BenchState& state);
void new_round(BenchState& state, const std::vector<std::string>& cards);
FreeAngle told(const BenchState& state);
// The round in one line, with the true angle of the first strip, in degrees.
std::string game_line(const BenchState& state, double angle);

}  // namespace overbend::window
