// A part whose order is wrong: the wall bent first swings into the punch in the lip's stroke. The hit must be
// found and named, on the right side of the strip and with a depth of the order of half the punch.

#include <doctest/doctest.h>

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

TEST_CASE("a flange in the punch's way is found, named and measured") {
    const Case c = read_case("cases/wrong-order/case.toml");
    const JobResult job = run_process(c, {});
    REQUIRE(job.steps.size() == 3);
    CHECK(job.steps[0].interferences.empty());
    CHECK(job.steps[2].interferences.empty());
    REQUIRE_FALSE(job.steps[1].interferences.empty());
    const Interference& hit = job.steps[1].interferences.front();
    CHECK(hit.deepest.distance < -1.0);
    CHECK(hit.deepest.blank_position > job.blank.bend_line[1]);  // beyond the wall's bend
    CHECK(why_not(c, job.findings).find("straight punch") != std::string::npos);
    CHECK_FALSE(job.feasible());
}
