// A channel as high as it is wide, made by V bends: a straight punch goes through the first wall when the
// second is bent, one with room cut out on that side does not, one cut out on the other does.

#include <doctest/doctest.h>

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

tool::VeePunch& punch_of(Case& c) {
    return std::get<tool::VeePunch>(c.tools[c.steps[1].punch].shape);
}

// The first wall is so deep in the punch, mm, and the verdict says so.
void check_hit(const Case& c, double deeper_than) {
    const JobResult job = run_process(c, {});
    REQUIRE(job.steps.size() == 2);
    CHECK(job.steps[0].interferences.empty());
    REQUIRE_FALSE(job.steps[1].interferences.empty());
    const Interference& hit = job.steps[1].interferences.front();
    CHECK(hit.deepest.distance < -deeper_than);
    CHECK(hit.deepest.blank_position < job.blank.bend_line[0]);
    CHECK(why_not(c, job.findings).find("deep in the punch 'relieved punch'") != std::string::npos);
    CHECK_FALSE(job.feasible());
}

}  // namespace

TEST_CASE("a relieved punch passes the flange that a straight one hits") {
    Case c = read_case("cases/relieved-punch/case.toml");
    const JobResult job = run_process(c, {});
    CHECK(job.solved);
    CHECK(job.feasible());
    REQUIRE(job.steps.size() == 2);
    // the wall comes no nearer to the punch than anything in the first stroke, where there is no wall yet
    CHECK(job.steps[1].interferences.empty());
    CHECK(job.steps[1].least.distance == doctest::Approx(job.steps[0].least.distance).epsilon(0.01));

    punch_of(c).relief->side = tool::Side::right;
    check_hit(c, 3.0);
    punch_of(c).relief.reset();
    check_hit(c, 5.0);
}
