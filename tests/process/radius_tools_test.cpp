// A large inside radius bottomed between radius tools: the stroke reaches the drawing's angle, and the strip has
// the drawing's radius.

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"
#include "sim/units.h"
#include "tests/tolerance.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;
using overbend::tests::relative_error;

TEST_CASE("radius tools make the radius and the angle that are drawn") {
    const Case c = read_case("cases/radius-bottomed/case.toml");
    const JobResult job = run_process(c, {});
    CHECK(job.solved);
    CHECK(job.feasible());
    REQUIRE(job.steps.size() == 1);
    REQUIRE(job.steps[0].bends.size() == 1);
    const BendResult& bend = job.steps[0].bends[0];
    CHECK(std::abs(bend.free - bend.drawing) < c.part.angle_tolerance);
    CHECK(bend.springback() > 1.0 * degree);
    CHECK(relative_error(bend.shape_free.inside_radius, c.part.bends[0].inside_radius) < 0.05);
    // under load the strip lies round the nose
    const auto& nose = std::get<tool::RadiusPunch>(c.tools[0].shape);
    CHECK(relative_error(bend.shape_loaded.inside_radius, nose.nose_radius) < 0.1);
}
