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
#include "sim/plan/shop_rules.h"
#include "sim/units.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

Case small() {
    const tests::OwnFolder folder;
    return read_case(folder.write("case.toml", tests::small_case));
}

Findings before_the_run(const Case& c) {
    return job_rules(c, make_blank(c), {});
}

const Finding* find(const Findings& findings, Rule rule) {
    const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& f) {
        return f.rule == rule && f.severity != Severity::not_checked;
    });
    return found == findings.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("rules: a sound case has no findings") {
    const Findings report = before_the_run(small());
    for (const std::string& f : sentences(small(), report)) MESSAGE(f);
    CHECK(report.empty());
}

TEST_CASE("rules: of the drawing, by the strip's metal and rolling direction") {
    Case c = small();
    c.part.bends[1].inside_radius = 0.79;  // DIN 6935, steel to 390 MPa, 1 mm: 1 mm across, 1.6 along
    const Findings report = before_the_run(c);
    const Finding* sharp = find(report, Rule::least_inside_radius);
    REQUIRE(sharp);
    CHECK(sharp->place.bend == 1);
    CHECK(sharp->figure == 0.79);
    CHECK(sharp->limit == 1.0);
    CHECK(place_words(c, sharp->place) == "bend 'toe'");
    c.part.bends[1].inside_radius = 1.3;
    c.rolling = Rolling::crosswise;
    const Findings along = before_the_run(c);
    REQUIRE(find(along, Rule::least_inside_radius));
    CHECK(find(along, Rule::least_inside_radius)->limit == 1.6);
    c.material.metal.clear();
    CHECK(with(before_the_run(c), Severity::not_checked).size() == 1);
}

TEST_CASE("rules: strain of the drawing before the run, of the simulated bend after it") {
    Case c = small();
    c.material.reduction_of_area = 0.22;  // 28 per cent are borne; the drawing's 1.4 mm take 26
    CHECK_FALSE(find(before_the_run(c), Rule::outer_fibre_strain));
    c.material.reduction_of_area = 0.18;  // 22 per cent
    REQUIRE(find(before_the_run(c), Rule::outer_fibre_strain));
    const JobResult job = run_process(c, {});
    const Finding* after = find(job.findings, Rule::outer_fibre_strain);
    REQUIRE(after);
    CHECK(after->figure ==
          doctest::Approx(100.0 * (std::exp(job.steps[0].bends[0].shape_loaded.outer_strain) - 1.0)));
    CHECK(after->severity == Severity::caution);
    c.material.reduction_of_area = 0.05;
    CHECK(find(before_the_run(c), Rule::outer_fibre_strain)->severity == Severity::stops);
}

TEST_CASE("rules: cut-outs, from the nearest edge to where the nearest bend begins") {
    Case c = small();
    const Blank blank = make_blank(c);
    const double right_end = blank.bend_line[0] + blank.half_arc[0];  // of the first bend
    const double least = 1.4 + 1.5;
    c.cutouts = {{right_end + least + 2.5, 10.0, 5.0, 5.0}};
    CHECK(nearest_bend(c, blank, c.cutouts[0]).edge_to_bend == doctest::Approx(least));
    CHECK_FALSE(find(before_the_run(c), Rule::hole_to_bend));
    c.cutouts.push_back({right_end + least + 3.9, 10.0, 4.0, 8.0});  // a slot, its end 0.1 mm nearer
    const Findings report = before_the_run(c);
    const Finding* f = find(report, Rule::hole_to_bend);
    REQUIRE(f);
    CHECK(f->place.cutout == 1);
    CHECK(f->figure == doctest::Approx(least - 0.1));
    CHECK(place_words(c, f->place) == "cut-out 2");
    CHECK(finding_words(c, *f).find("'heel'") != std::string::npos);
}

// 20 mm of strip, 1 mm thick. A hole of 5 mm with its middle 3.5 mm from the edge leaves a web of 1 mm; at
// 3.4 mm 0.9. A slot of 4 mm along the strip and 10 across has 6 mm of side along the bend line: r + 2 s.
TEST_CASE("rules: cut-outs near an edge, small ones, slots along the bend") {
    Case c = small();
    const Blank blank = make_blank(c);
    const double begins = blank.bend_line[0] - blank.half_arc[0];
    const auto found = [&](const Cutout& cutout, Rule rule) {
        c.cutouts = {cutout};
        const Findings report = before_the_run(c);
        return find(report, rule) ? find(report, rule)->figure : -1.0;
    };
    REQUIRE(c.width == 20.0);
    CHECK(found({8.0, 3.5, 5.0, 5.0}, Rule::web_to_edge) == -1.0);
    CHECK(found({8.0, 3.4, 5.0, 5.0}, Rule::web_to_edge) == doctest::Approx(0.9));
    CHECK(found({8.0, 16.6, 5.0, 5.0}, Rule::web_to_edge) == doctest::Approx(0.9));
    CHECK(found({2.9, 10.0, 4.0, 4.0}, Rule::web_to_edge) == doctest::Approx(0.9));
    CHECK(found({3.0, 10.0, 4.0, 4.0}, Rule::web_to_edge) == -1.0);
    CHECK(found({8.0, 10.0, 0.9, 4.0}, Rule::least_hole) == doctest::Approx(0.9));
    CHECK(found({8.0, 10.0, 4.0, 0.9}, Rule::least_hole) == doctest::Approx(0.9));
    CHECK(found({8.0, 10.0, 1.0, 4.0}, Rule::least_hole) == -1.0);
    const double round = begins - (1.4 + 1.5), across = begins - (1.4 + 2.0);
    CHECK(found({round - 2.0, 10.0, 4.0, 4.0}, Rule::hole_to_bend) == -1.0);
    CHECK(found({round - 2.0, 10.0, 10.0, 4.0}, Rule::hole_to_bend) == doctest::Approx(2.9));
    CHECK(found({across - 2.0, 10.0, 10.0, 4.0}, Rule::hole_to_bend) == -1.0);
    CHECK(finding_words(c, *plan::thin_web(0.9, plan::BlankEdge::along, 1.0)) ==
          "a web of 0.90 mm to the edge of the strip, less than one thickness, 1.00 mm: the web may tear");
}

// The groove has 84 degrees: 96 can be reached, less a few when the nose pinches first.
TEST_CASE("rules: an angle that the tools cannot reach stops the job, before it is run") {
    Case c = small();
    for (const double angle : {80.0, 97.0}) {
        c.steps[0].stop_value = angle * degree;
        const Findings report = before_the_run(c);
        const Finding* f = find(report, Rule::angle_of_tools);
        CHECK((f != nullptr) == (angle > 90.0));
        if (f) CHECK(f->severity == Severity::stops);
        if (f) CHECK(f->figure > angle);  // springback on top
    }
}

TEST_CASE("rules: a flange that slips off the shoulder stops the job, one that is short is a caution") {
    Case c = small();
    c.part.flats.back() = 2.9;  // 3.8 mm from the bend line: not half the opening
    const Findings slips = before_the_run(c);
    REQUIRE(find(slips, Rule::flange_on_die));
    CHECK(find(slips, Rule::flange_on_die)->severity == Severity::stops);
    CHECK(place_words(c, find(slips, Rule::flange_on_die)->place) == "step 'second'");
    c.part.flats.back() = 4.0;  // 5.39 mm outside: 60 degrees, r + s = 2.4
    const Findings brief = before_the_run(c);
    CHECK_FALSE(find(brief, Rule::flange_on_die));
    REQUIRE(find(brief, Rule::least_flange));
    CHECK(find(brief, Rule::least_flange)->figure == doctest::Approx(4.0 + 2.4 * std::tan(30.0 * degree)));
    CHECK(find(brief, Rule::least_flange)->severity == Severity::caution);
}

TEST_CASE("rules: a wide die is a caution") {
    Case c = small();
    auto& face = std::get<tool::VeeDie>(c.tools[1].shape).faces[0];
    face.die_opening = 12.5;
    for (double& flat : c.part.flats) flat = 30.0;
    const Findings report = before_the_run(c);
    REQUIRE(find(report, Rule::die_opening));
    CHECK(report.size() == 2);  // one a step
}

TEST_CASE("rules: the return flange of the wrong order is named before it is pressed, and stays no after") {
    const Case c = read_case("cases/wrong-order/case.toml");
    const Findings report = before_the_run(c);
    const auto returns = [](const Findings& list) {
        return those(list, [](const Finding& f) {
            return f.severity == Severity::stops && f.rule == Rule::return_flange;
        });
    };
    CHECK(returns(report).size() >= 1);
    const JobResult job = run_process(c, {});
    REQUIRE(returns(job.findings).size() == 1);
    CHECK(sentence(c, returns(job.findings).front()).rfind("step 'lip': a return flange of 40.00 mm", 0) ==
          0);
}
