// Where a film is: by the clock, by hand, and in another film. On a playback of two strokes made up for it.

#include "scenes/window/job/play_head.h"

#include <doctest/doctest.h>

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;
using namespace overbend::window;

namespace {

// Frames 0 to 9 bring tools, 10 to 49 are the first stroke, 50 to 69 between, 70 to 109 the second, 110 to
// 119 after it. An interference at 80 to 90.
Playback two_strokes() {
    Playback playback;
    playback.frames.frames_per_second = 30.0;
    playback.frames.instants.resize(120);
    playback.strokes = {{0, 10, 49}, {1, 70, 109}};
    playback.interferences = {{1, 80, 90}};
    return playback;
}

}  // namespace

TEST_CASE("a film goes on by the clock, at its speed, and stops at its end") {
    const Playback playback = two_strokes();
    PlayHead head;
    advance(head, playback, 1.0);
    CHECK(head.at == 0.0);  // it does not play
    play_or_pause(head, playback);
    advance(head, playback, 0.5);
    CHECK(head.at == doctest::Approx(15.0));
    head.speed = 0.1;
    advance(head, playback, 0.5);
    CHECK(head.at == doctest::Approx(16.5));
    head.speed = 10.0;
    advance(head, playback, 1.0);
    CHECK(head.at == 119.0);
    CHECK(head.playing == Playing::no);
    play_or_pause(head, playback);  // from the start
    CHECK(head.at == 0.0);
}

TEST_CASE("a looped stroke begins again, what lies between strokes does not") {
    const Playback playback = two_strokes();
    PlayHead head;
    head.looping = Looping::yes, head.playing = Playing::yes;
    head.at = 40.0;
    advance(head, playback, 0.5);  // 15 frames: 6 beyond the last
    CHECK(head.at == doctest::Approx(16.0));
    head.at = 60.0;
    advance(head, playback, 0.5);
    CHECK(head.at == doctest::Approx(75.0));
}

TEST_CASE("by hand: frames, strokes, the first interference") {
    const Playback playback = two_strokes();
    PlayHead head;
    head.playing = Playing::yes;
    head.at = 20.4;
    step_frames(head, playback, 1);
    CHECK(head.at == 21.0);
    CHECK(head.playing == Playing::no);
    step_frames(head, playback, -1);
    CHECK(head.at == 20.0);
    head.at = 20.4;
    step_frames(head, playback, -1);
    CHECK(head.at == 20.0);
    next_stroke(head, playback);
    CHECK(head.at == 70.0);
    next_stroke(head, playback);
    CHECK(head.at == 119.0);
    previous_stroke(head, playback);
    CHECK(head.at == 70.0);
    previous_stroke(head, playback);
    CHECK(head.at == 10.0);
    previous_stroke(head, playback);
    CHECK(head.at == 0.0);
    CHECK(go_to_first_interference(head, playback));
    CHECK(head.at == 80.0);
    Playback clear = two_strokes();
    clear.interferences.clear();
    CHECK_FALSE(go_to_first_interference(head, clear));
    CHECK(head.at == 80.0);
    go_to(head, playback, 1e9);
    CHECK(head.at == 119.0);
}

TEST_CASE("speeds go up and down between a tenth and ten") {
    double speed = 1.0;
    for (int i = 0; i < 9; ++i) speed = faster(speed);
    CHECK(speed == greatest_speed);
    for (int i = 0; i < 9; ++i) speed = slower(speed);
    CHECK(speed == least_speed);
    CHECK(faster(0.3) == 0.5);
    CHECK(slower(0.3) == 0.2);
}

TEST_CASE("the same place in another film") {
    const Playback from = two_strokes();
    Playback to = two_strokes();
    to.frames.instants.resize(200);
    to.strokes = {{0, 20, 98}, {1, 120, 190}};
    CHECK(same_place(from, 10.0, to) == 20.0);
    CHECK(same_place(from, 49.0, to) == 98.0);
    CHECK(same_place(from, 29.5, to) == doctest::Approx(59.0));
    CHECK(same_place(from, 33.0, two_strokes()) == 33.0);
    to.strokes = {{0, 20, 98}};
    CHECK(same_place(from, 90.0, to) == 90.0);
}
