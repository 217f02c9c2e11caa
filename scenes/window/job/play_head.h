// Where a film is: playing by the clock, or moved by hand. Knows no window.

#pragma once

#include "scenes/window/job/playback.h"

namespace overbend::window {

enum class Playing { no, yes };
enum class Looping { no, yes };
constexpr double least_speed = 0.1, greatest_speed = 10.0;

struct PlayHead {
    double at = 0.0;  // frame, with the part of the way to the next one
    Playing playing = Playing::no;
    Looping looping = Looping::no;  // the stroke that it is in
    double speed = 1.0;             // of the film's own time, least_speed to greatest_speed
};

// Goes on by so many seconds of the clock; stops at the film's end, or begins the looped stroke again.
void advance(PlayHead& head, const Playback& playback, double seconds);

// At the end it starts again.
void play_or_pause(PlayHead& head, const Playback& playback);

// All of these stop it, but for the strokes.
void go_to(PlayHead& head, const Playback& playback, double at);
void step_frames(PlayHead& head, const Playback& playback, int count);  // to whole frames
void next_stroke(PlayHead& head, const Playback& playback);
void previous_stroke(PlayHead& head, const Playback& playback);  // first to the beginning of the present one
bool go_to_first_interference(PlayHead& head, const Playback& playback);  // false: there is none

// The next of the usual speeds.
double faster(double speed);
double slower(double speed);

}  // namespace overbend::window
