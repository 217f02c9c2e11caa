// A job as a film for the window: its strokes, its interferences, its states among the frames.

#include "scenes/window/job/reel.h"

#include <doctest/doctest.h>

#include "scenes/files/case/read_case.h"

using namespace overbend::files;
using namespace overbend::job;
using namespace overbend::window;
namespace render = overbend::render;

namespace {

SharedReel reel_of(const Case& c) {
    const std::atomic<bool> cancelled{false};
    RunProgress progress;
    return make_reel(std::make_shared<const RanJob>(run_job(c, Wanted(cancelled), progress)), {640, 360},
                     picture::Lens::hidden, picture::Charts::shown);
}

}  // namespace

TEST_CASE("strokes and interferences have their frames") {
    const SharedReel reel = reel_of(read_case("cases/wrong-order/case.toml"));
    REQUIRE(reel->strokes.size() == 3);
    for (const Stretch& s : reel->strokes) {
        CHECK(reel->frames.moments[s.first].passage == film::Passage::placed);
        CHECK(reel->frames.moments[s.last].passage == film::Passage::free);
        CHECK(stroke_at(*reel, s.first) == s.stroke);
        CHECK(stroke_at(*reel, s.last + 0.5) == s.stroke);
    }
    CHECK(stroke_at(*reel, 0.0) == 0);
    CHECK(stroke_at(*reel, reel->strokes[0].last + 1.0) == 1);  // on its way to the next one
    CHECK(stroke_at(*reel, reel->last()) == 2);
    // At the end the finished part, as the last stroke left it.
    const film::Moment end = moment_of(*reel, reel->last(), 1.0);
    CHECK(end.passage == film::Passage::finished);
    CHECK(end.stroke == 2);
    CHECK(end.at + 1.0 == static_cast<double>(reel->film.strokes[2].recording->states.size()));
    CHECK(reel->frames.moments.front().passage != film::Passage::title);
    // The case's one: the lip's stroke.
    REQUIRE_FALSE(reel->interferences.empty());
    const Stretch hit = reel->interferences.front();
    CHECK(hit.stroke == 1);
    const Interference& found = reel->job->result.steps[1].interferences.front();
    CHECK(reel->frames.moments[hit.first].at >= found.first_state);
    CHECK(reel->frames.moments[hit.first - 1].at < found.first_state);
    // A state's frame is where that state is seen.
    const std::optional<double> frame = frame_of_state(*reel, 1, found.deepest.state);
    REQUIRE(frame);
    CHECK(std::abs(moment_of(*reel, *frame, 1.0).at - found.deepest.state) < 1.0);
    CHECK(moment_of(*reel, *frame, 1.0).stroke == 1);
    CHECK_FALSE(frame_of_state(*reel, 7, 0.0));
}

TEST_CASE("springback is drawn as many times as large as is asked for, whatever the film was made for") {
    const SharedReel reel = reel_of(read_case("cases/one-bend-dc01/case.toml"));
    const Stretch& s = reel->strokes.front();
    for (int i = s.first; i <= s.last; ++i) {
        CHECK(moment_of(*reel, i, 1.0).springback_scale == 1.0);
        const double five = moment_of(*reel, i, 5.0).springback_scale;
        const film::Passage passage = reel->frames.moments[i].passage;
        if (passage == film::Passage::retract) CHECK(five == 5.0);
        if (passage < film::Passage::retract) CHECK(five == 1.0);
    }
    CHECK(moment_of(*reel, s.last, 5.0).springback_scale == doctest::Approx(1.0));  // its true size again
}

TEST_CASE("a job whose last stroke was not solved is shown as far as it went") {
    Case c = read_case("cases/one-bend-dc01/case.toml");
    c.steps[0].stop = StopKind::force;
    c.steps[0].stop_value = 1e6;  // kN
    const SharedReel reel = reel_of(c);
    REQUIRE(reel->strokes.size() == 1);
    CHECK(reel->last() > 30.0);
}
