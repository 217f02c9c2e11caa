// Which tools fit a bend, on tools that fit and on ones that are wrong in one thing each.

#include "scenes/job/plan/fitting_pairs.h"

#include <doctest/doctest.h>

#include "scenes/files/case/read_case.h"
#include "scenes/files/case/work.h"
#include "sim/units.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

Fitting fitting_of(const Case& c, const std::vector<int>& bends) {
    return fitting_pairs(c, make_blank(c), bends);
}

// Bends 3 and 4 are the demo's offset, 1 and 2 its channel.
Case demo() {
    return read_case("cases/cable-hook/case.toml");
}

tool::OffsetDie& step_die(Case& c) {
    return std::get<tool::OffsetDie>(c.tools[3].shape);
}
tool::OffsetPunch& step_punch(Case& c) {
    return std::get<tool::OffsetPunch>(c.tools[2].shape);
}

}  // namespace

TEST_CASE("the demo's tools fit the bends they make") {
    const Case c = demo();
    CHECK(fitting_of(c, {0}).pairs.size() == 2);  // both grooves
    const Fitting hook = fitting_of(c, {6});
    REQUIRE(hook.pairs.size() == 1);
    CHECK(hook.pairs.front().die_face == 2);
    REQUIRE(hook.misfits.size() == 1);
    CHECK(hook.misfits.front().why.find("under load") != std::string::npos);
    CHECK(fitting_of(c, {3, 4}).pairs.size() == 1);
    const Fitting channel = fitting_of(c, {1, 2});
    REQUIRE(channel.pairs.size() == 1);
    CHECK(channel.pairs.front().pad.has_value());
}

TEST_CASE("two bends in one stroke want tools of their sense, angle and size") {
    Case c = demo();
    CHECK(fitting_of(c, {2, 3}).pairs.empty());  // 90 and 45 degrees
    CHECK(fitting_of(c, {0, 1}).pairs.empty());  // another width
    c.part.bends[4].angle = 40.0 * degree;
    CHECK(fitting_of(c, {3, 4}).pairs.empty());
    c = demo();
    step_die(c).angle = step_punch(c).angle = 45.5 * degree;
    const Fitting closes = fitting_of(c, {3, 4});
    REQUIRE(closes.misfits.size() == 1);
    CHECK(closes.misfits.front().why.find("closes at 45.5") != std::string::npos);
    c = demo();
    step_die(c).offset = step_punch(c).offset = 9.0;
    CHECK(fitting_of(c, {3, 4}).pairs.empty());
    step_die(c).offset = 3.0;
    CHECK(fitting_of(c, {3, 4}).misfits.front().why.find("offset") != std::string::npos);
}

TEST_CASE("the step of two flats is the drawing's") {
    Case c = demo();
    c.part.flats[4] = 10.0;
    c.part.bends[3].inside_radius = c.part.bends[4].inside_radius = 0.0;
    // sharp bends: half a thickness of mid-line radius each
    CHECK(drawn_step(c, 3) ==
          doctest::Approx(10.0 * std::sin(45.0 * degree) + 1.0 - std::cos(45.0 * degree)));
}

// Four pairs turned down for one reason that differs in its figure, two for another one, one alone.
TEST_CASE("pairs that are turned down for one reason are counted, not listed, the nearest miss told first") {
    const std::vector<Rejected> all = {{"a", "closes at 80.5 degrees", 0.3},
                                       {"b", "too wide"},
                                       {"c", "closes at 78 degrees", 0.32},
                                       {"d", "closes at 90.5 degrees", 0.1},
                                       {"e", "too wide", 0.05},
                                       {"f", "closes at 1 degrees", 0.9},
                                       {"g", "no face"}};
    const std::vector<Rejected> lines = grouped(all);
    REQUIRE(lines.size() == 4);
    CHECK(lines[0].what == "e");
    CHECK(lines[1].what == "d, and 3 others alike");
    CHECK(lines[1].why == "closes at 90.5 degrees");
    CHECK(lines[2].what == "b");
    CHECK(lines[3].what == "g");
    CHECK(grouped({}).empty());
}
