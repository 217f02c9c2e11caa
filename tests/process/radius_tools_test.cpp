// A large inside radius bottomed between radius tools: the stroke reaches the drawing's angle, and the strip
// has the drawing's radius.

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

namespace {

// What a radius gauge reads on the inside of a lone bend: the mean over the middle 60 degrees of turn.
double gauge_radius(const strip::StripState& s) {
    const double middle = 0.5 * (s.theta.front() + s.theta.back()), half = 30.0 * degree;
    double length = 0.0, turn = 0.0;
    for (int i = 0; i + 1 < s.nodes(); ++i) {
        if (std::abs(0.5 * (s.theta[i] + s.theta[i + 1]) - middle) > half) continue;
        length += std::hypot(s.x[i + 1] - s.x[i], s.y[i + 1] - s.y[i]);
        turn += std::abs(s.theta[i + 1] - s.theta[i]);
    }
    return length / turn - 0.5 * s.thickness;
}

}  // namespace

// Measured 10.06 mm by gauge for 10 drawn; the sharpest place under the nose has 8.3.
TEST_CASE("radius tools make the radius and the angle that are drawn") {
    const Case c = read_case("cases/radius-bottomed/case.toml");
    const JobResult job = run_process(c, {});
    CHECK(job.solved);
    CHECK(job.feasible());
    REQUIRE(job.steps.size() == 1);
    REQUIRE(job.steps[0].bends.size() == 1);
    const BendResult& bend = job.steps[0].bends[0];
    CHECK(std::abs(bend.free - bend.drawing) < allowed_angle(c, bend.bend));
    CHECK(bend.springback() > 1.0 * degree);
    CHECK(relative_error(gauge_radius(job.steps[0].stroke.free), c.part.bends[0].inside_radius) < 0.03);
    CHECK(job.profile.greatest() < 0.1);
}
