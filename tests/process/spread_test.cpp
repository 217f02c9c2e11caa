// What finished angles may be off, against the closed form of springback and against runs at the ends of the
// ranges.

#include "scenes/job/run/spread.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>

#include "scenes/files/case/read_case.h"
#include "sim/units.h"

using namespace overbend;
using namespace overbend::job;

namespace {

double finished(files::Case c, const JobResult& nominal) {
    c.blank_length = nominal.blank.length, c.bend_lines = nominal.blank.bend_line;
    for (files::Step& step : c.steps)
        if (step.stop == files::StopKind::free_angle || step.stop == files::StopKind::drawing_angle)
            step.stop = files::StopKind::travel, step.stop_value = nominal.steps[0].stroke.stop_travel;
    return run_process(c, {}).finished_angle.at(0);
}

}  // namespace

// Full runs at the range's end, on the case's own mesh: the coarse difference may be off by a fifth of
// itself.
TEST_CASE("the spread of an angle is what runs at the ends of the ranges give") {
    const files::Case c = files::read_case("cases/one-bend-dc01/case.toml");
    const JobResult nominal = run_process(c, {});
    REQUIRE(nominal.solved);
    const std::vector<AngleSpread> spread = angle_spread(c, nominal);
    REQUIRE(spread.size() == 1);

    files::Case strong = c;
    strong.material = material::with_strength(c.material, 1.0 + c.material.strength_range);
    const double by_strength = std::abs(finished(strong, nominal) - nominal.finished_angle[0]);
    files::Case rough = c;
    rough.run.friction += 0.05;
    const double by_friction = std::abs(finished(rough, nominal) - nominal.finished_angle[0]);
    std::printf(
        "spread of an angle, deg: strength %.3f (run %.3f), thickness %.3f, friction %.3f (run %.3f), "
        "whole %.2f\n",
        spread[0].strength / degree, by_strength / degree, spread[0].thickness / degree,
        spread[0].friction / degree, by_friction / degree, spread[0].whole() / degree);
    CHECK(spread[0].strength == doctest::Approx(by_strength).epsilon(0.2));
    CHECK(std::abs(spread[0].friction - by_friction) < 0.05 * degree);
    REQUIRE(spread[0].mechanics);
    CHECK(*spread[0].mechanics == doctest::Approx(0.1 * degree));
    CHECK(spread[0].whole() > spread[0].strength);
    CHECK(spread[0].whole() < 3.0 * degree);
}

TEST_CASE(
    "what nothing was compared with has no figure for the mechanics, a part that is not finished none at "
    "all") {
    const files::Case c = files::read_case("cases/channel-with-pad/case.toml");
    const std::vector<AngleSpread> spread = angle_spread(c, run_process(c, {}));
    REQUIRE(spread.size() == 2);
    CHECK_FALSE(spread[0].mechanics);
    CHECK(spread[0].whole() > 0.0);
    CHECK(angle_spread(c, {}).empty());
}
