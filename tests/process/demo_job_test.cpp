// The demo, from blank to finished part. Angles against the drawing; the rest are properties that any job
// must have.

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/documents/results/results_json.h"
#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"
#include "sim/units.h"

using namespace overbend;
using namespace overbend::documents;
using namespace overbend::files;
using namespace overbend::job;

TEST_CASE("the demo's six strokes make its drawing") {
    const Case c = read_case("cases/cable-hook/case.toml");
    const JobResult job = run_process(c, {});
    REQUIRE(job.solved);
    REQUIRE(job.steps.size() == 6);
    CHECK(job.feasible());
    for (const StepResult& step : job.steps) {
        CAPTURE(step.name);
        CHECK(step.stroke.outcome == stroke::Outcome::reached);
        CHECK(step.stroke.audit.residue_percent() < 1.0);
        CHECK(step.stroke.balance_error < 1e-3);
        CHECK(step.interferences.empty());
        CHECK(step.stroke.recording.states.front().phase == stroke::Phase::placed);
        CHECK(step.stroke.recording.states.back().phase == stroke::Phase::free);
        // the flats of an offset are bowed between its lands: from middle to middle they may close
        if (step.name != "offset")
            for (const BendResult& b : step.bends) CHECK(b.springback() > 0.0);
    }
    // History: a bend made in an early step is still there, untouched, in the end.
    for (std::size_t b = 0; b < job.finished_angle.size(); ++b)
        CHECK(std::abs(job.finished_angle[b] - c.part.bends[b].angle) <
              allowed_angle(c, static_cast<int>(b)));
    // What shear its layers kept when it was released relaxes as the strip is pressed again, and the wall
    // below the first one goes through the channel die: some hundredths of a degree.
    CHECK(std::abs(job.finished_angle[0] - job.steps[0].bends[0].free) < 0.1 * degree);

    const std::string first = results_json(c, job);
    CHECK(first == results_json(c, run_process(c, {})));
}
