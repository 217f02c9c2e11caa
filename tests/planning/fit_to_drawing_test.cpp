// Blank and stops set right: the finished part is the drawing, and the case that says so gives the same part
// again.

#include "scenes/job/plan/fit_to_drawing.h"

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/files/case/read_case.h"
#include "scenes/files/case/write_case.h"
#include "sim/units.h"
#include "tests/files/own_folder.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

// rad, of the finished part
double worst_angle(const Fit& fit) {
    double worst = 0.0;
    for (std::size_t b = 0; b < fit.job.finished_angle.size(); ++b)
        worst = std::max(worst, std::abs(fit.job.finished_angle[b] - fit.c.part.bends[b].angle));
    return worst;
}

}  // namespace

TEST_CASE("the demo is fitted to the middle of its tolerances") {
    const Fit fit = fit_to_drawing(read_case("cases/cable-hook/case.toml"), {});
    REQUIRE(fit.job.solved);
    CHECK(fit.meets);
    CHECK(fit.why_not.empty());
    CHECK(worst_angle(fit) < 0.1 * degree);
    for (const MeasuredSize& m : fit.job.measures)
        if (m.what == SizeKind::leg) CHECK(std::abs(m.off()) < 0.05);

    // written, read and run again it is the same part
    const tests::OwnFolder folder;
    const JobResult again = run_process(read_case(folder.write("case.toml", write_case(fit.c, ""))), {});
    REQUIRE(again.solved);
    CHECK(again.feasible());
    for (std::size_t b = 0; b < again.finished_angle.size(); ++b)
        CHECK(std::abs(again.finished_angle[b] - fit.job.finished_angle[b]) < 1e-4);
    CHECK(std::abs(again.profile.greatest() - fit.job.profile.greatest()) < 0.01);
}

TEST_CASE("what cannot be met is told with the reason") {
    // A nose far smaller than the drawing's radius: legs and angles come right, the bend does not.
    Case c = read_case("cases/wrong-order/case.toml");
    std::swap(c.steps[0], c.steps[1]);
    for (Bend& b : c.part.bends) b.inside_radius = 4.0;
    const Fit fit = fit_to_drawing(c, {});
    REQUIRE(fit.job.solved);
    CHECK_FALSE(fit.meets);
    CHECK(worst_angle(fit) < 0.002);
    REQUIRE(fit.why_not.size() == 3);  // its bends
    for (const std::string& why : fit.why_not) CHECK(why.find("instead of 4.00") != std::string::npos);
}
