// The shop rules on whole cases, before their strokes are run and after.
//
// Here    figures of the tables are checked in tests/plan; these checks hold that each rule is asked with the
//         right ones.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/job_rules.h"
#include "scenes/job/run/process.h"
#include "sim/units.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;
using plan::RuleFinding;

namespace {

Case small() {
    const tests::OwnFolder folder;
    return read_case(folder.write("case.toml", tests::small_case));
}

RuleReport before_the_run(const Case& c) {
    return job_rules(c, make_blank(c), {});
}

const RuleFinding* find(const RuleReport& report, const std::string& rule) {
    const auto found = std::find_if(report.findings.begin(), report.findings.end(),
                                    [&](const RuleFinding& f) { return f.rule == rule; });
    return found == report.findings.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("rules: a sound case has no findings") {
    const RuleReport report = before_the_run(small());
    for (const RuleFinding& f : report.findings) MESSAGE(f.rule << ": " << f.words);
    CHECK(report.findings.empty());
    CHECK(report.not_checked.empty());
}

TEST_CASE("rules: of the drawing, by the strip's metal and rolling direction") {
    Case c = small();
    c.part.bends[1].inside_radius = 0.9;  // DIN 6935, steel to 390 MPa, 1 mm: 1 mm across, 1.6 along
    const RuleReport report = before_the_run(c);
    const RuleFinding* sharp = find(report, "least inside radius");
    REQUIRE(sharp);
    CHECK(sharp->index == 1);
    CHECK(sharp->figure == 0.9);
    CHECK(sharp->limit == 1.0);
    CHECK(place_words(c, *sharp) == "bend 'toe'");
    c.part.bends[1].inside_radius = 1.4;
    c.rolling = Rolling::crosswise;
    const RuleReport along = before_the_run(c);
    REQUIRE(find(along, "least inside radius"));
    CHECK(find(along, "least inside radius")->limit == 1.6);
    c.material.metal.clear();
    CHECK(before_the_run(c).not_checked.size() == 1);
}

TEST_CASE("rules: strain of the drawing before the run, of the simulated bend after it") {
    Case c = small();
    c.material.elongation = 0.05;
    const RuleReport before = before_the_run(c);
    REQUIRE(find(before, "outer-fibre strain"));
    CHECK(find(before, "outer-fibre strain")->words.find("drawing") != std::string::npos);
    const JobResult job = run_process(c, {});
    const RuleFinding* after = find(job.rules, "outer-fibre strain");
    REQUIRE(after);
    CHECK(after->figure ==
          doctest::Approx(100.0 * (std::exp(job.steps[0].bends[0].shape_loaded.outer_strain) - 1.0)));
    CHECK(job.findings.empty());  // a caution is no verdict
}

TEST_CASE("rules: cut-outs, from the nearest edge to where the nearest bend begins") {
    Case c = small();
    const Blank blank = make_blank(c);
    const double right_end = blank.bend_line[0] + blank.half_arc[0];  // of the first bend
    const double least = 1.4 + 1.5;
    c.cutouts = {{right_end + least + 2.5, 10.0, 5.0, 5.0}};
    CHECK(edge_to_bend(c.cutouts[0], blank, 0) == doctest::Approx(least));
    CHECK_FALSE(find(before_the_run(c), "hole to bend"));
    c.cutouts.push_back({right_end + least + 3.9, 10.0, 4.0, 8.0});  // a slot, its end 0.1 mm nearer
    const RuleReport report = before_the_run(c);
    const RuleFinding* f = find(report, "hole to bend");
    REQUIRE(f);
    CHECK(f->index == 1);
    CHECK(f->figure == doctest::Approx(least - 0.1));
    CHECK(place_words(c, *f) == "cut-out 2");
    CHECK(f->words.find("'heel'") != std::string::npos);
}

// The groove has 84 degrees: 96 can be reached, less a few when the nose pinches first.
TEST_CASE("rules: an angle that the tools cannot reach stops the job, before it is run") {
    Case c = small();
    for (const double angle : {80.0, 97.0}) {
        c.steps[0].stop_value = angle * degree;
        const RuleReport report = before_the_run(c);
        const RuleFinding* f = find(report, "angle of the tools");
        CHECK((f != nullptr) == (angle > 90.0));
        if (f) CHECK(f->stops);
        if (f) CHECK(f->figure > angle);  // springback on top
    }
}

TEST_CASE("rules: a flange that slips off the shoulder stops the job, one that is short is a caution") {
    Case c = small();
    c.part.flats.back() = 2.9;  // 3.8 mm from the bend line: not half the opening
    const RuleReport slips = before_the_run(c);
    REQUIRE(find(slips, "flange on the die"));
    CHECK(find(slips, "flange on the die")->stops);
    CHECK(place_words(c, *find(slips, "flange on the die")) == "step 'second'");
    c.part.flats.back() = 4.0;  // 5.39 mm outside: 60 degrees, r + s = 2.4
    const RuleReport brief = before_the_run(c);
    CHECK_FALSE(find(brief, "flange on the die"));
    REQUIRE(find(brief, "least flange"));
    CHECK(find(brief, "least flange")->figure == doctest::Approx(4.0 + 2.4 * std::tan(30.0 * degree)));
    CHECK_FALSE(find(brief, "least flange")->stops);
}

TEST_CASE("rules: a wide die is a caution") {
    Case c = small();
    auto& face = std::get<tool::VeeDie>(c.tools[1].shape).faces[0];
    face.die_opening = 12.5;
    for (double& flat : c.part.flats) flat = 30.0;
    const RuleReport report = before_the_run(c);
    REQUIRE(find(report, "die opening"));
    CHECK(report.findings.size() == 2);  // one a step
}

TEST_CASE("rules: the return flange of the wrong order is named before it is pressed, and stays no after") {
    const Case c = read_case("cases/wrong-order/case.toml");
    const RuleReport report = before_the_run(c);
    const auto stops = [](const RuleReport& r) {
        return std::count_if(r.findings.begin(), r.findings.end(),
                             [](const RuleFinding& f) { return f.stops && f.rule == "return flange"; });
    };
    CHECK(stops(report) >= 1);
    const JobResult job = run_process(c, {});
    CHECK(stops(job.rules) == 1);
    const std::string words = "step 'lip': a return flange of 40.00 mm";
    CHECK(std::any_of(job.findings.begin(), job.findings.end(),
                      [&](const std::string& f) { return f.rfind(words, 0) == 0; }));
}
