// A case run beside the window: whole, cancelled, and one that does not go.

#include "scenes/window/job/job_run.h"

#include <doctest/doctest.h>

#include <chrono>

#include "scenes/files/case/read_case.h"
#include "scenes/window/job/playback.h"

using namespace overbend::files;
using namespace overbend::job;
using namespace overbend::window;

TEST_CASE("a job comes with its strokes and its shop, and tells how far it is") {
    const Case c = read_case("cases/one-bend-dc01/case.toml");
    const std::atomic<bool> cancelled{false};
    RunProgress progress;
    const RanJob job = run_job(c, Wanted(cancelled), progress);
    CHECK(job.wrong.empty());
    CHECK(job.result.solved);
    CHECK(job.has_strokes());
    CHECK(job.shop.tools.size() == 2);
    CHECK(progress.step == 0);
    CHECK(progress.travel > 1.0);
}

TEST_CASE("strokes are handed over as they come, and make a film that is not judged") {
    const Case c = read_case("cases/wrong-order/case.toml");
    const std::atomic<bool> cancelled{false};
    RunProgress progress;
    const RanJob job = run_job(c, Wanted(cancelled), progress);
    REQUIRE(c.steps.size() == 3);
    std::optional<RanJob> part = progress.take();  // the last that came
    REQUIRE(part);
    CHECK_FALSE(progress.take());
    CHECK(part->goes_on);
    CHECK_FALSE(job.goes_on);
    CHECK(part->recorded() == std::vector<int>{0, 1});
    // As in the whole job, on the same blank.
    CHECK(part->result.blank.length == job.result.blank.length);
    CHECK(part->result.steps[1].bends[0].free == job.result.steps[1].bends[0].free);
    const SharedPlayback film =
        make_playback(std::make_shared<const RanJob>(std::move(*part)), {640, 480},
                      overbend::picture::Lens::hidden, overbend::picture::Charts::hidden);
    CHECK(film->strokes.size() == 2);
    for (const overbend::film::Instant& m : film->frames.instants)
        CHECK(m.passage != overbend::film::Passage::finished);
}

TEST_CASE("a job that nobody wants any more ends soon") {
    const Case c = read_case("cases/cable-hook/case.toml");
    Background<RanJob> background;
    RunProgress progress;
    background.start([&](const Wanted& wanted) { return run_job(c, wanted, progress); });
    while (progress.travel == 0.0) std::this_thread::yield();
    background.cancel();
    for (int i = 0; i < 5000 && background.busy(); ++i)
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    CHECK_FALSE(background.busy());
    CHECK_FALSE(background.take());
    CHECK(progress.step == 0);  // of six
}

TEST_CASE("what does not go is told in words") {
    Case c = read_case("cases/one-bend-dc01/case.toml");
    const std::atomic<bool> cancelled{false};
    RunProgress progress;
    c.run.layers = 1000;  // as no file could have it
    const RanJob job = run_job(c, Wanted(cancelled), progress);
    CHECK_FALSE(job.wrong.empty());
    CHECK_FALSE(job.has_strokes());

    Case forced = read_case("cases/one-bend-dc01/case.toml");
    forced.steps[0].stop = StopKind::force;
    forced.steps[0].stop_value = 1e6;
    const RanJob stopped = run_job(forced, Wanted(cancelled), progress);
    CHECK_FALSE(stopped.result.feasible());
    CHECK(stopped.has_strokes());
}
