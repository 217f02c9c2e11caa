// A job as a film for the window: its strokes, its interferences, its states among the frames.

#include "scenes/window/job/playback.h"

#include <doctest/doctest.h>

#include "scenes/files/case/read_case.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;
using namespace overbend::window;

namespace {

SharedPlayback playback_of(const Case& c) {
    const std::atomic<bool> cancelled{false};
    RunProgress progress;
    return make_playback(std::make_shared<const RanJob>(run_job(c, Wanted(cancelled), progress)), {640, 360},
                         picture::Lens::hidden, picture::Charts::shown);
}

}  // namespace

TEST_CASE("strokes and interferences have their frames") {
    const SharedPlayback playback = playback_of(read_case("cases/wrong-order/case.toml"));
    REQUIRE(playback->strokes.size() == 3);
    for (const Stretch& s : playback->strokes) {
        CHECK(playback->frames.instants[s.first].passage == film::Passage::placed);
        CHECK(playback->frames.instants[s.last].passage == film::Passage::free);
        CHECK(stroke_at(*playback, s.first) == s.stroke);
        CHECK(stroke_at(*playback, s.last + 0.5) == s.stroke);
    }
    CHECK(stroke_at(*playback, 0.0) == 0);
    CHECK(stroke_at(*playback, playback->strokes[0].last + 1.0) == 1);  // on its way to the next one
    CHECK(stroke_at(*playback, playback->last()) == 2);
    // At the end the finished part, as the last stroke left it.
    const film::Instant end = instant_of(*playback, playback->last(), 1.0);
    CHECK(end.passage == film::Passage::finished);
    CHECK(end.stroke == 2);
    CHECK(end.at + 1.0 == static_cast<double>(playback->shown.strokes[2].recording->states.size()));
    CHECK(playback->frames.instants.front().passage != film::Passage::title);
    // The case's one: the lip's stroke.
    REQUIRE_FALSE(playback->interferences.empty());
    const Stretch hit = playback->interferences.front();
    CHECK(hit.stroke == 1);
    const Interference& found = playback->job->result.steps[1].interferences.front();
    CHECK(playback->frames.instants[hit.first].at >= found.first_state);
    CHECK(playback->frames.instants[hit.first - 1].at < found.first_state);
    // A state's frame is where that state is seen.
    const std::optional<double> frame = frame_of_state(*playback, 1, found.deepest.state);
    REQUIRE(frame);
    CHECK(std::abs(instant_of(*playback, *frame, 1.0).at - found.deepest.state) < 1.0);
    CHECK(instant_of(*playback, *frame, 1.0).stroke == 1);
    CHECK_FALSE(frame_of_state(*playback, 7, 0.0));
}

TEST_CASE("springback is drawn as many times as large as is asked for, whatever the film was made for") {
    const SharedPlayback playback = playback_of(read_case("cases/one-bend-dc01/case.toml"));
    const Stretch& s = playback->strokes.front();
    for (int i = s.first; i <= s.last; ++i) {
        CHECK(instant_of(*playback, i, 1.0).springback_scale == 1.0);
        const double five = instant_of(*playback, i, 5.0).springback_scale;
        const film::Passage passage = playback->frames.instants[i].passage;
        if (passage == film::Passage::retract) CHECK(five == 5.0);
        if (passage < film::Passage::retract) CHECK(five == 1.0);
    }
    CHECK(instant_of(*playback, s.last, 5.0).springback_scale ==
          doctest::Approx(1.0));  // its true size again
}

TEST_CASE("a job whose last stroke was not solved is shown as far as it went") {
    Case c = read_case("cases/one-bend-dc01/case.toml");
    c.steps[0].stop = StopKind::force;
    c.steps[0].stop_value = 1e6;  // kN
    const SharedPlayback playback = playback_of(c);
    REQUIRE(playback->strokes.size() == 1);
    CHECK(playback->last() > 30.0);
}
