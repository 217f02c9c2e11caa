// What is measured on a finished part: inside radius and legs of strips whose shape is known, whichever way
// they lie, and what sizes may be off.
//
// Closed forms  An arc of the mid-line of radius R, its area kept: the surfaces have sqrt(R^2 -+ R t), from
//               (R^2 - r^2)/2 = R t/2. Up to 90 degrees the outer faces of the flats cross
//               (R + t/2) tan(turn/2) beyond the arc's ends; a sharper bend reaches its outer radius beyond.
// Tolerances    ISO 2768-1, class m: tables from memory.

#include "scenes/job/run/measures.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/legs.h"
#include "scenes/job/run/process.h"
#include "sim/strip/place.h"
#include "sim/units.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

constexpr double flat = 20.0, thickness = 1.0;  // mm

// Two flats and an arc of the mid-line between them; turn of either sense.
strip::StripState arc_strip(double radius, double turn) {
    strip::StripState s;
    s.thickness = thickness;
    const int nodes = 1201;
    const double sense = turn < 0.0 ? -1.0 : 1.0, bent = std::abs(turn), arc = radius * bent;
    for (int i = 0; i < nodes; ++i) {
        const double at = (2.0 * flat + arc) * i / (nodes - 1);
        const double theta = std::clamp((at - flat) / radius, 0.0, bent),
                     beyond = std::max(0.0, at - flat - arc);
        const double straight = std::min(at, flat);
        s.blank_position.push_back(at);
        s.x.push_back(straight + radius * std::sin(theta) + beyond * std::cos(theta));
        s.y.push_back(sense * (radius * (1.0 - std::cos(theta)) + beyond * std::sin(theta)));
        s.theta.push_back(sense * theta);
        s.warp.insert(s.warp.end(), {0.0, 0.0});
    }
    return s;
}

Case arc_case(double radius, double turn) {
    Case c;
    c.thickness = thickness;
    c.part.flats = {flat, flat};
    c.part.bends = {{"bend", turn, radius - 0.5 * thickness}};
    return c;
}

Blank arc_blank(double radius, double turn) {
    Blank blank;
    blank.length = 2.0 * flat + radius * std::abs(turn);
    blank.bend_line = {0.5 * blank.length};
    blank.half_arc = {0.5 * radius * std::abs(turn)};
    return blank;
}

Case small() {
    const tests::OwnFolder folder;
    Case c = read_case(folder.write("case.toml", tests::small_case));
    c.run.elements_per_thickness = 6.0;
    return c;
}

}  // namespace

TEST_CASE("radius and legs of an arc between two flats are those of its closed form") {
    // Where the curvature begins all at once, the middle of the thickness jumps: the arc has to be longer.
    for (const auto& [radius, turns] : {std::pair{2.5, std::vector{0.5 * pi, -0.5 * pi, 0.65 * pi}},
                                        std::pair{6.0, std::vector{0.25 * pi, 0.5 * pi, -0.65 * pi}}})
        for (const double turn : turns) {
            CAPTURE(radius);
            CAPTURE(turn);
            const Case c = arc_case(radius, turn);
            const Blank blank = arc_blank(radius, turn);
            const double outer = std::sqrt(radius * radius + radius * thickness);
            const double corner = std::abs(turn) < 0.51 * pi
                                      ? (radius + 0.5 * thickness) * std::tan(0.5 * std::abs(turn))
                                      : outer;
            for (const bool over : {false, true})
                for (const bool end : {false, true}) {
                    strip::StripState s = arc_strip(radius, turn);
                    if (over) strip::turn_over(s);
                    if (end) strip::turn_end_for_end(s);
                    const BentStrip bent = bent_strip(s);
                    CHECK(inside_radius(bent, 0.25 * flat, blank.length - 0.25 * flat, thickness) ==
                          doctest::Approx(std::sqrt(radius * radius - radius * thickness))
                              .epsilon(0.005)
                              .scale(1));
                    for (const double leg : made_legs(c, blank, bent))
                        CHECK(leg == doctest::Approx(flat + corner).epsilon(5e-4));
                }
        }
}

TEST_CASE("what sizes may be off, from the general to the one's own") {
    Case c = small();  // legs of 13.4 and 22.8 mm beside bends of 60 degrees
    CHECK(allowed_angle(c, 0) == doctest::Approx(0.5 * degree));
    CHECK(allowed_leg(c, 0) == doctest::Approx(0.2));
    CHECK(allowed_radius(c, 0) == doctest::Approx(0.21));  // 15 per cent of 1.4
    c.part.bends[0].inside_radius = 1.0;
    CHECK(allowed_radius(c, 0) == doctest::Approx(0.2));
    c.part.angle_tolerance = 2.0 * degree, c.part.length_tolerance = 0.7, c.part.radius_tolerance = 0.4;
    CHECK(allowed_angle(c, 1) == doctest::Approx(2.0 * degree));
    CHECK(allowed_leg(c, 1) == 0.7);
    CHECK(allowed_radius(c, 1) == 0.4);
    c.part.bends[1].tolerance.either_way = 0.1 * degree, c.part.bends[1].radius_tolerance.either_way = 0.05;
    c.part.leg_tolerances = {{}, {0.1, false}, {}};
    CHECK(allowed_angle(c, 1) == doctest::Approx(0.1 * degree));
    CHECK(allowed_leg(c, 1) == 0.1);
    CHECK(allowed_leg(c, 2) == 0.7);
    CHECK(allowed_radius(c, 1) == 0.05);
}

TEST_CASE(
    "the profile may be off by what its sizes may be, more at its ends, and by anything beside a reference") {
    Case c = small();
    const std::vector<double> usual = allowed_profile(c);
    REQUIRE(usual.size() == drawing_points(c).size());
    CHECK(*std::min_element(usual.begin(), usual.end()) > 0.01);
    CHECK(*std::max_element(usual.begin(), usual.end()) < 1.5);
    CHECK(usual.front() > 2.0 * *std::min_element(usual.begin(), usual.end()));
    Case wider = c;
    wider.part.angle_tolerance = 1.0 * degree;  // twice the usual
    for (std::size_t i = 0; i < usual.size(); ++i) CHECK(allowed_profile(wider)[i] > usual[i]);
    c.part.profile_tolerance = 0.3;
    CHECK(allowed_profile(c) == std::vector<double>(usual.size(), 0.3));
    wider.part.bends[0].tolerance.reference = true;
    for (const double allowed : allowed_profile(wider)) CHECK(allowed > 1e9);
}

// A bend line 12 mm off its place, a radius of 20 drawn and 1.4 made, a blank too short: each is refused.
TEST_CASE("a part with a size out of tolerance is refused, and says which") {
    const auto broken = [](const Case& c) {
        std::vector<Rule> rules;
        const JobResult job = run_process(c, {});
        CHECK(job.solved);
        CHECK_FALSE(job.feasible());
        for (const Finding& f : with(job.findings, Severity::stops)) rules.push_back(f.rule);
        return rules;
    };
    const auto has = [](const std::vector<Rule>& rules, Rule rule) {
        return std::count(rules.begin(), rules.end(), rule) > 0;
    };
    const Case right = small();
    CHECK(run_process(right, {}).feasible());

    Case line = right;
    const Blank blank = make_blank(right);
    line.blank_length = blank.length, line.bend_lines = blank.bend_line;
    line.bend_lines[0] += 12.0;
    CHECK(has(broken(line), Rule::finished_leg));
    Case brief = right;
    brief.blank_length = blank.length - 1.0, brief.bend_lines = blank.bend_line;
    CHECK(broken(brief) == std::vector<Rule>{Rule::finished_leg});
    Case round = right;
    round.part.bends[0].inside_radius = 20.0;
    CHECK(has(broken(round), Rule::finished_radius));
    round.part.bends[0].radius_tolerance.reference = true;
    for (const Finding& f : run_process(round, {}).findings) CHECK(f.rule != Rule::finished_radius);
    Case angle = right;
    angle.steps[0].stop = StopKind::free_angle, angle.steps[0].stop_value = 87.0 * degree;
    CHECK(has(broken(angle), Rule::finished_angle));
}

TEST_CASE("an angle that was typed in radians is named") {
    Case c = small();
    c.part.bends[0].angle = 1.5708 * degree;
    const JobResult job = run_process(c, {});
    const auto slip = std::find_if(job.findings.begin(), job.findings.end(),
                                   [](const Finding& f) { return f.rule == Rule::slip_of_units; });
    REQUIRE(slip != job.findings.end());
    CHECK(slip->severity == Severity::caution);
    CHECK(finding_words(c, *slip).find("give 90") != std::string::npos);
    c.part.bends[0].angle = 2.0 * degree;  // no round angle in radians
    for (const Finding& f : run_process(c, {}).findings) CHECK(f.rule != Rule::slip_of_units);
}
