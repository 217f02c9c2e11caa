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

TEST_CASE("the demo is fitted to its drawing within 0.1 degree and 0.1 mm") {
    const Fit fit = fit_to_drawing(read_case("cases/cable-hook/case.toml"), {});
    REQUIRE(fit.job.solved);
    CHECK(fit.meets);
    CHECK(fit.why_not.empty());
    CHECK(fit.runs > 1);  // DIN 6935's blank is some tenths of a millimetre off
    for (std::size_t b = 0; b < fit.job.finished_angle.size(); ++b)
        CHECK(std::abs(fit.job.finished_angle[b] - fit.c.part.bends[b].angle) < 0.1 * degree);
    CHECK(fit.job.profile.greatest() < 0.1);

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
    CHECK(fit.worst_angle < 0.002);
    bool told = false;
    for (const std::string& why : fit.why_not)
        told = told || why.find("another nose radius") != std::string::npos;
    CHECK(told);
}
