// The blank fitted to the finished strip, and how far a profile lies off its drawing.
//
// Here    the drawing's legs are what the program works from; a second run with the fitted lines shows
//         whether it found them. Legs are measured where the first run's blank was wrong by tenths of a
//         millimetre.
// Allowed what a second run leaves: 0.02 mm; measured 0.001 (two V bends), 0.016 (wiped), 0.03 for a hem,
//         whose second run folds at another place.

#include <doctest/doctest.h>

#include <cmath>
#include <numeric>

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/fitted_blank.h"
#include "scenes/job/run/flat_pattern.h"
#include "scenes/job/run/process.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

double greatest(const std::vector<double>& values) {
    double most = 0.0;
    for (const double v : values) most = std::max(most, std::abs(v));
    return most;
}

std::vector<double> missing_of(const Case& c, const JobResult& job) {
    return legs_missing(c, job.blank, job.steps.back().stroke.free);
}

Case small() {
    const tests::OwnFolder folder;
    Case c = read_case(folder.write("case.toml", tests::small_case));
    c.run.elements_per_thickness = 6.0;
    return c;
}

// On the blank by DIN 6935.
JobResult by_rule(Case c) {
    c.blank_length.reset(), c.bend_lines.clear();
    return run_process(with_blank(c, make_blank(c)), {});
}

// A second run with the fitted blank has the drawing's legs.
void check_second_run(const Case& c, double least_before, double allowed) {
    const JobResult first = by_rule(c);
    REQUIRE(first.solved);
    CHECK(greatest(missing_of(c, first)) > least_before);
    const JobResult second = run_process(with_blank(c, first.fitted), {});
    REQUIRE(second.solved);
    CHECK(second.blank.bend_line == first.fitted.bend_line);
    CHECK(greatest(missing_of(c, second)) < allowed);
}

}  // namespace

TEST_CASE("a second run with the fitted lines has the drawing's legs") {
    Case rounder = small();  // drawn rounder than a nose of 1 mm makes it
    for (Bend& bend : rounder.part.bends) bend.inside_radius = 3.0;
    check_second_run(rounder, 0.1, 0.02);
    check_second_run(read_case("cases/wiped-angle/case.toml"), 0.5, 0.02);
}

TEST_CASE("a case that states no blank is run on the fitted one, in hundredths; a stated length is kept") {
    Case c = small();
    const JobResult job = run_process(c, {});
    const JobResult by_hand = run_process(with_blank(c, in_hundredths(by_rule(c).fitted)), {});
    CHECK(job.blank.length == by_hand.blank.length);
    CHECK(job.blank.bend_line == by_hand.blank.bend_line);
    CHECK(job.finished_angle == by_hand.finished_angle);
    CHECK(std::abs(100.0 * job.blank.length - std::round(100.0 * job.blank.length)) < 1e-9);
    c.blank_length = job.blank.length + 0.5;
    const JobResult longer = run_process(c, {});
    CHECK(longer.blank.length == *c.blank_length);
    CHECK(longer.blank.bend_line[1] == doctest::Approx(job.blank.bend_line[1]).epsilon(0.001));
    CHECK_FALSE(longer.feasible());  // its last leg is half a millimetre long
}

TEST_CASE("a hem's legs are measured to its crown") {
    const Case c = read_case("cases/flat-hem/case.toml");
    const JobResult first = by_rule(c);
    const JobResult second = run_process(with_blank(c, first.fitted), {});
    REQUIRE(second.solved);
    CHECK(greatest(missing_of(c, first)) > 0.3);
    CHECK(greatest(missing_of(c, second)) < 0.05);
}

// A line moved by hand comes back, and so does the length.
TEST_CASE("lines that are wrong by a millimetre are put where they belong") {
    const Case c = small();
    const Blank right = run_process(c, {}).fitted;
    Blank wrong = right;
    wrong.bend_line[0] += 1.0;
    wrong.bend_line[1] -= 0.4;
    wrong.length += 0.7;
    const Blank again = run_process(with_blank(c, wrong), {}).fitted;
    for (int b = 0; b < 2; ++b) CHECK(std::abs(again.bend_line[b] - right.bend_line[b]) < 0.02);
    CHECK(std::abs(again.length - right.length) < 0.02);
}

// Both bends of a stroke stand as its tools have them: what is missing between them is not put into the
// blank.
TEST_CASE("the leg between two bends of one stroke is left to its tools") {
    const Case c = read_case("cases/channel-with-pad/case.toml");
    const JobResult job = run_process(c, {});
    REQUIRE(job.solved);
    const std::vector<double> missing = missing_of(c, job);
    CHECK(std::abs(job.fitted.length - (job.blank.length + missing[0] + missing[2])) < 1e-9);
    const double before = 0.5 * (job.blank.bend_line[0] + job.blank.bend_line[1]);
    const double after = 0.5 * (job.fitted.bend_line[0] + job.fitted.bend_line[1]);
    CHECK(std::abs(after - before - missing[0]) < 1e-9);
}

TEST_CASE("a strip that lies turned or face down is measured alike") {
    const Case c = small();
    Case turned = c;
    for (Step& step : turned.steps) step.first = First::right;
    const Blank a = run_process(c, {}).fitted, b = run_process(turned, {}).fitted;
    for (int i = 0; i < 2; ++i) CHECK(std::abs(a.bend_line[i] - b.bend_line[i]) < 0.02);
    CHECK(std::abs(a.length - b.length) < 0.02);
}
