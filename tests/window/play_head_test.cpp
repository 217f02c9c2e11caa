// Where a film is: by the clock, by hand, and in another film. On a reel of two strokes made up for it.

#include "scenes/window/job/play_head.h"

#include <doctest/doctest.h>

using namespace overbend::files;
using namespace overbend::job;
using namespace overbend::window;
namespace render = overbend::render;

namespace {

// Frames 0 to 9 bring tools, 10 to 49 are the first stroke, 50 to 69 between, 70 to 109 the second, 110 to
// 119 after it. An interference at 80 to 90.
Reel two_strokes() {
    Reel reel;
    reel.frames.frames_per_second = 30.0;
    reel.frames.moments.resize(120);
    reel.strokes = {{0, 10, 49}, {1, 70, 109}};
    reel.interferences = {{1, 80, 90}};
    reel.steps = {0, 1};
    return reel;
}

}  // namespace

TEST_CASE("a film goes on by the clock, at its speed, and stops at its end") {
    const Reel reel = two_strokes();
    PlayHead head;
    go_on(head, reel, 1.0);
    CHECK(head.at == 0.0);  // it does not play
    play_or_pause(head, reel);
    go_on(head, reel, 0.5);
    CHECK(head.at == doctest::Approx(15.0));
    head.speed = 0.1;
    go_on(head, reel, 0.5);
    CHECK(head.at == doctest::Approx(16.5));
    head.speed = 10.0;
    go_on(head, reel, 1.0);
    CHECK(head.at == 119.0);
    CHECK(head.playing == Playing::no);
    play_or_pause(head, reel);  // anew
    CHECK(head.at == 0.0);
}

TEST_CASE("a looped stroke begins again, what lies between strokes does not") {
    const Reel reel = two_strokes();
    PlayHead head;
    head.looping = Looping::yes, head.playing = Playing::yes;
    head.at = 40.0;
    go_on(head, reel, 0.5);  // 15 frames: 6 beyond the last
    CHECK(head.at == doctest::Approx(16.0));
    head.at = 60.0;
    go_on(head, reel, 0.5);
    CHECK(head.at == doctest::Approx(75.0));
}

TEST_CASE("by hand: frames, strokes, the first interference") {
    const Reel reel = two_strokes();
    PlayHead head;
    head.playing = Playing::yes;
    head.at = 20.4;
    step_frames(head, reel, 1);
    CHECK(head.at == 21.0);
    CHECK(head.playing == Playing::no);
    step_frames(head, reel, -1);
    CHECK(head.at == 20.0);
    head.at = 20.4;
    step_frames(head, reel, -1);
    CHECK(head.at == 20.0);
    next_stroke(head, reel);
    CHECK(head.at == 70.0);
    next_stroke(head, reel);
    CHECK(head.at == 119.0);
    previous_stroke(head, reel);
    CHECK(head.at == 70.0);
    previous_stroke(head, reel);
    CHECK(head.at == 10.0);
    previous_stroke(head, reel);
    CHECK(head.at == 0.0);
    CHECK(go_to_first_interference(head, reel));
    CHECK(head.at == 80.0);
    Reel clear = two_strokes();
    clear.interferences.clear();
    CHECK_FALSE(go_to_first_interference(head, clear));
    CHECK(head.at == 80.0);
    go_to(head, reel, 1e9);
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
    const Reel from = two_strokes();
    Reel to = two_strokes();
    to.frames.moments.resize(200);
    to.strokes = {{0, 20, 98}, {1, 120, 190}};
    CHECK(same_place(from, 10.0, to) == 20.0);
    CHECK(same_place(from, 49.0, to) == 98.0);
    CHECK(same_place(from, 29.5, to) == doctest::Approx(59.0));
    CHECK(same_place(from, 33.0, two_strokes()) == 33.0);
    to.strokes = {{0, 20, 98}};
    CHECK(same_place(from, 90.0, to) == 90.0);
}
