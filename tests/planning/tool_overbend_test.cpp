// Tools that are not made yet get the overbend that a stroke lacked; those of the rack are left alone.

#include "scenes/job/plan/tool_size.h"

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/files/case/read_case.h"
#include "scenes/job/plan/fit_to_drawing.h"
#include "sim/units.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

const std::vector<int> all = {0, 1, 2, 3, 4, 5, 6};

}  // namespace

TEST_CASE("a groove, an offset pair and a foot each get theirs, in whole degrees, and say so") {
    const Case demo = read_case("cases/cable-hook/case.toml");
    Case c = demo;
    CHECK_FALSE(add_overbend(c, c.steps[0], 1.2 * degree, all).empty());
    const auto groove = [](const Case& k) { return std::get<tool::VeeDie>(k.tools[1].shape).faces[0].angle; };
    CHECK(groove(c) == doctest::Approx(groove(demo) - 2.0 * degree));

    c = demo;
    CHECK_FALSE(add_overbend(c, c.steps[3], 0.3 * degree, all).empty());
    CHECK(std::get<tool::OffsetDie>(c.tools[3].shape).angle == doctest::Approx(48.5 * degree));
    CHECK(std::get<tool::OffsetPunch>(c.tools[2].shape).angle == doctest::Approx(48.5 * degree));

    c = demo;
    CHECK_FALSE(add_overbend(c, c.steps[5], 0.4 * degree, all).empty());
    CHECK(std::get<tool::ChannelPunch>(c.tools[4].shape).side_relief == doctest::Approx(3.0 * degree));
}

TEST_CASE("tools of the rack, and tools that bear no more, stay as they are") {
    const Case demo = read_case("cases/cable-hook/case.toml");
    Case c = demo;
    for (const std::size_t step : {0, 3, 5}) CHECK(add_overbend(c, c.steps[step], 1.0 * degree, {}).empty());
    CHECK(add_overbend(c, c.steps[0], 70.0 * degree, all).empty());
    CHECK(add_overbend(c, c.steps[5], 20.0 * degree, all).empty());
    CHECK(std::get<tool::VeeDie>(c.tools[1].shape).faces[0].angle ==
          std::get<tool::VeeDie>(demo.tools[1].shape).faces[0].angle);
}

TEST_CASE("a groove that closes too early is given overbend until the angle is reached") {
    Case c = read_case("cases/wrong-order/case.toml");
    c.part.flats = {20.0, 40.0};
    c.part.bends = {{"bend", 90.0 * degree, 1.1}};
    c.steps.resize(1);
    c.steps[0].bends = {0};
    auto& groove = std::get<tool::VeeDie>(c.tools[1].shape).faces[0];
    groove.angle = 100.0 * degree;  // with a punch as blunt it closes at a bend of 80
    std::get<tool::VeePunch>(c.tools[0].shape).angle = groove.angle;
    const Fit as_it_is = fit_to_drawing(c, {});
    CHECK_FALSE(as_it_is.meets);
    CHECK_FALSE(as_it_is.why_not.empty());
    FitOptions own;
    own.own_tools = {0, 1};
    const Fit fit = fit_to_drawing(c, own);
    CHECK_FALSE(fit.changed_tools.empty());
    CHECK(std::abs(fit.job.finished_angle[0] - 90.0 * degree) < 0.1 * degree);
}
