// Sizes of tools that are not made yet: what is changed together, and what is refused.

#include "scenes/job/plan/tool_size.h"

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/files/case/read_case.h"
#include "sim/units.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

const std::vector<int> all = {0, 1, 2, 3, 4, 5, 6};

}  // namespace

TEST_CASE("of weighed values none is further from the one chosen than need be") {
    CHECK(least_worst({}) == 0.0);
    CHECK(least_worst({{0.3, 2.0}}) == 0.3);
    CHECK(least_worst({{0.0, 1.0}, {1.0, 1.0}, {0.4, 1.0}}) == doctest::Approx(0.5));
    CHECK(least_worst({{0.0, 1.0}, {1.0, 3.0}}) == doctest::Approx(0.75));  // 0.75 and 3 * 0.25
    // against trying them all
    const std::vector<Weighed> values = {{0.12, 0.4}, {-0.3, 0.75}, {0.05, 0.1}, {0.2, 0.41}};
    const auto worst = [&](double x) {
        double w = 0.0;
        for (const Weighed& v : values) w = std::max(w, v.weight * std::abs(v.value - x));
        return w;
    };
    for (double x = -1.0; x < 1.0; x += 0.001) CHECK(worst(least_worst(values)) <= worst(x) + 1e-12);
}

TEST_CASE("a channel's foot, block and pad change together, and the gaps stay") {
    const Case demo = read_case("cases/cable-hook/case.toml");
    Case c = demo;
    const Step& channel = c.steps[5];
    CHECK(pair_size(c, channel, all) == doctest::Approx(18.9));
    REQUIRE(resize_pair(c, channel, 19.234));
    const auto& foot = std::get<tool::ChannelPunch>(c.tools[channel.punch].shape);
    const auto& was_foot = std::get<tool::ChannelPunch>(demo.tools[channel.punch].shape);
    CHECK(foot.width == doctest::Approx(19.23));
    CHECK(foot.width - foot.shank_width == doctest::Approx(was_foot.width - was_foot.shank_width));
    const auto gap = [&](const Case& k) {
        return std::get<tool::ChannelDie>(k.tools[channel.die].shape).die_opening -
               std::get<tool::ChannelPunch>(k.tools[channel.punch].shape).width;
    };
    CHECK(gap(c) == doctest::Approx(gap(demo)));
    CHECK(std::get<Pad>(c.tools[*channel.pad].shape).block.width -
              std::get<Pad>(demo.tools[*channel.pad].shape).block.width ==
          doctest::Approx(0.33));
}

TEST_CASE("an offset pair keeps its angle; what is in use elsewhere, or of the rack, is left alone") {
    Case c = read_case("cases/cable-hook/case.toml");
    const Step offset = c.steps[3];
    const double angle = std::get<tool::OffsetDie>(c.tools[offset.die].shape).angle;
    CHECK(pair_size(c, offset, all) == doctest::Approx(3.28 / std::sin(angle)));
    REQUIRE(resize_pair(c, offset, 4.0));
    CHECK(std::get<tool::OffsetDie>(c.tools[offset.die].shape).offset ==
          doctest::Approx(std::get<tool::OffsetPunch>(c.tools[offset.punch].shape).offset));
    CHECK(std::get<tool::OffsetDie>(c.tools[offset.die].shape).offset ==
          doctest::Approx(4.0 * std::sin(angle)).epsilon(0.002));
    CHECK_FALSE(resize_pair(c, offset, 0.5));  // no room for its corners
    CHECK(pair_size(c, offset, all) == doctest::Approx(4.0).epsilon(0.002));

    CHECK_FALSE(pair_size(c, offset, {}).has_value());
    CHECK_FALSE(pair_size(c, offset, {offset.punch}).has_value());
    CHECK_FALSE(pair_size(c, c.steps[0], all).has_value());  // one bend
    c.steps.push_back(offset);
    CHECK_FALSE(pair_size(c, offset, all).has_value());
}

TEST_CASE("a nose is changed as far as the groove takes it") {
    Case c = read_case("cases/wrong-order/case.toml");
    const double was = std::get<tool::VeePunch>(c.tools[0].shape).nose_radius;
    CHECK(change_nose(c, 0, was + 0.204));
    CHECK(std::get<tool::VeePunch>(c.tools[0].shape).nose_radius == doctest::Approx(was + 0.2));
    CHECK_FALSE(change_nose(c, 0, 40.0));
    CHECK(std::get<tool::VeePunch>(c.tools[0].shape).nose_radius == doctest::Approx(was + 0.2));

    std::swap(c.steps[0], c.steps[1]);
    const JobResult job = run_process(c, {});
    REQUIRE(job.solved);
    CHECK_FALSE(nose_fit(c, job, 0, {}).has_value());
    const auto fit = nose_fit(c, job, 0, {0});
    REQUIRE(fit.has_value());
    for (Bend& b : c.part.bends) b.inside_radius += 0.5;
    CHECK(nose_fit(c, job, 0, {0})->missing == doctest::Approx(fit->missing + 0.5));
}
