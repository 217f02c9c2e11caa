// Findings as figures and their words: each rule has its facts, words have the figures, nothing is said
// twice.

#include <doctest/doctest.h>

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/findings.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;
using namespace overbend::job;

namespace {

files::Case small() {
    const tests::OwnFolder folder;
    return files::read_case(folder.write("case.toml", tests::small_case));
}

// With a place and figures for the words of any rule.
Finding sample(Rule rule) {
    Finding f{Severity::caution, rule, 2.5, 2.0, {1.0, 2.0, 3.0, 4.0, 5.0, 6.0}, "the detail"};
    f.place.of = On::step, f.place.step = f.place.bend = f.place.cutout = f.place.tool = 0;
    return f;
}

}  // namespace

TEST_CASE("every rule has a name, a source and words of its own") {
    const files::Case c = small();
    std::vector<std::string> all;
    for (int i = 0; i <= static_cast<int>(Rule::other_springs); ++i) {
        Finding f = sample(static_cast<Rule>(i));
        CAPTURE(i);
        CHECK(facts_of(f.rule).rule == f.rule);
        CHECK_FALSE(std::string(facts_of(f.rule).name).empty());
        if (f.rule != Rule::least_inside_radius) CHECK_FALSE(source_of(f).empty());
        CHECK_FALSE(finding_words(c, f).empty());
    }
    Finding radius = sample(Rule::least_inside_radius);
    radius.source = "its table";
    CHECK(source_of(radius) == "its table");
}

TEST_CASE("words have the figures, and follow the severity and the side") {
    const files::Case c = small();
    Finding shut = sample(Rule::shut_height);
    CHECK(sentence(c, shut) ==
          "step 'first': the closed tools are 2.0 mm high; the ram comes down to 2.5 mm "
          "above the bed; remedy: pack 0.5 mm under the die");
    shut.severity = Severity::within;
    CHECK(finding_words(c, shut).find("pack") == std::string::npos);
    Finding hole{Severity::caution, Rule::hole_to_bend, -0.2, 3.5, {1.5}};
    hole.place.of = On::cutout, hole.place.cutout = 1, hole.place.bend = 0;
    CHECK(sentence(c, hole) ==
          "cut-out 2: its edge reaches 0.20 mm into the bend; keep it 3.50 mm (r + "
          "1.5 s) away, bend 'heel'");
    Finding slot{Severity::caution, Rule::hole_to_bend, 3.2, 4.0, {2.0}};
    slot.place.of = On::cutout, slot.place.cutout = 0, slot.place.bend = 0;
    CHECK(sentence(c, slot) ==
          "cut-out 1: its edge is 3.20 mm from where the bend begins, less than 4.00 mm (r + 2 s), bend "
          "'heel'");
    Finding drill{Severity::caution, Rule::least_hole, 0.4, 1.0, {0.5}};
    CHECK(finding_words(c, drill) ==
          "0.40 mm is less than one thickness, 1.00 mm: too small for a laser as well; remedy: drill it");
    drill.severity = Severity::note, drill.figure = 0.6;
    CHECK(finding_words(c, drill) ==
          "0.60 mm is less than one thickness, 1.00 mm: to be cut by laser, not punched");
    Finding thrust{Severity::note, Rule::side_thrust, 80.0, 0.0, {1.0, 3.2}, "good guides"};
    CHECK(finding_words(c, thrust) ==
          "side thrust of 80 kN per metre (3.20 kN) pushes the punch to the right and the die to the left; "
          "it needs good guides");
    thrust.further[0] = -1.0;
    CHECK(finding_words(c, thrust).find("the punch to the left and the die to the right") !=
          std::string::npos);
    Finding wide{Severity::caution, Rule::die_opening, 12.5, 12.0, {6.0, 4.0, 12.0, 11.6}};
    CHECK(
        finding_words(c, wide) ==
        "a die opening of 12.5 mm between arc centres (11.6 mm at the corners) is far from the 6.0 mm usual "
        "for this thickness (4.0 to 12.0): flanges must be long, and springback varies");
    Finding slips = sample(Rule::flange_on_die);
    slips.place.bend = -1, slips.succeeded = true;
    CHECK(finding_words(c, slips) ==
          "2.50 mm of strip beside the bend line slips off the die's shoulder; at least "
          "2.00 mm is needed (right of the bend); the simulated stroke succeeded");
    Finding zero{Severity::stops, Rule::finished_angle, -30.0, 0.5, {-0.001, 30.0}};
    zero.place.of = On::bend, zero.place.bend = 0;
    CHECK(sentence(c, zero) == "bend 'heel': 0.00 degrees instead of 30.00; tolerance 0.50");
}

TEST_CASE("what is in the list is not said again, and the gravest comes first") {
    Findings list;
    add(list, sample(Rule::throat));
    add(list, sample(Rule::throat));
    CHECK(list.size() == 1);
    Finding other = sample(Rule::throat);
    other.place.step = 1, other.severity = Severity::stops;
    add(list, other);
    not_checked(Rule::press, "the case names no press", list);
    REQUIRE(list.size() == 3);
    CHECK(stops(list));
    CHECK(by_severity(list).front().severity == Severity::stops);
    CHECK(with(list, Severity::caution).size() == 1);
    CHECK(of_group(list, RuleGroup::trade).empty());
    CHECK(sentence(small(), list.back()) == "press: the case names no press");
}
