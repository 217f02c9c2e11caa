// Any section of the strip at any instant: at the bend it is the section of greatest curvature that the
// other charts take, away from it nothing has happened, and the path goes as far as the stroke has come.
// On a real stroke.

#include "render/chart/section_now.h"

#include <doctest/doctest.h>

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"
#include "sim/errors.h"
#include "tests/chart/legible.h"

using namespace overbend;
using namespace overbend::chart;
using namespace overbend::picture;

namespace {

const stroke::Recording& recording() {
    static const job::JobResult job =
        run_process(files::read_case("cases/one-bend-dc01/case.toml"), job::ProcessOptions{});
    return job.steps.front().stroke.recording;
}

double last() {
    return static_cast<double>(recording().states.size()) - 1.0;
}

}  // namespace

TEST_CASE("at the bend it is the section of greatest curvature") {
    const BentSection bent =
        find_section(recording(), recording().blank_position.front(), recording().blank_position.back());
    const SectionNow now = section_now(recording(), bent.loaded, bent.blank_position, 2);
    const stroke::State& held = recording().states[bent.loaded];
    const SectionPoint there = section_point(recording(), held, bent);
    CHECK(now.blank_position == bent.blank_position);
    CHECK(now.at.curvature == there.curvature);
    CHECK(now.at.moment == there.moment);
    const std::vector<LayerPoint> layers = section_layers(recording(), held, bent);
    REQUIRE(now.layers.size() == layers.size());
    for (std::size_t i = 0; i < layers.size(); ++i) CHECK(now.layers[i].stress == layers[i].stress);
    CHECK(now.lower < now.layers.front().height);
    CHECK(now.upper > now.layers.back().height);
    CHECK(now.marked == 2);
}

TEST_CASE("the path goes as far as the stroke has come, on axes that stand still") {
    const BentSection bent =
        find_section(recording(), recording().blank_position.front(), recording().blank_position.back());
    const double early = 0.5 * bent.loaded + 0.25;
    const SectionNow half = section_now(recording(), early, bent.blank_position);
    CHECK(half.path.loading.size() == static_cast<std::size_t>(early) + 2);
    CHECK(half.path.unloading.empty());
    CHECK(half.path.loading.back().curvature == half.at.curvature);
    CHECK(half.path.loading.back().curvature >= half.path.loading[half.path.loading.size() - 2].curvature);
    const SectionNow free = section_now(recording(), last(), bent.blank_position);
    CHECK(free.path.unloading.size() > 1);
    CHECK(free.path.unloading.front().moment == free.path.loading.back().moment);  // one path
    CHECK(free.at.moment < 0.02 * free.path.loading.back().moment);
    CHECK(free.moment.high == half.moment.high);
    CHECK(free.curvature.high == half.curvature.high);
    CHECK(free.stress.low == half.stress.low);
    CHECK(free.plastic_strain.high == half.plastic_strain.high);
}

TEST_CASE("away from the bend nothing has happened") {
    const SectionNow end = section_now(recording(), last(), 0.0);
    for (const LayerPoint& l : end.layers) CHECK(l.plastic_strain == 0.0);
    CHECK(std::abs(end.at.curvature) < 1e-6);
    CHECK_THROWS_AS(section_now(recording(), last() + 1.0, 0.0), OutOfRange);
    CHECK_THROWS_AS(section_now(recording(), -0.1, 0.0), OutOfRange);
}

TEST_CASE("its charts can be read, and refuse a box without room") {
    const double line = 0.5 * (recording().blank_position.front() + recording().blank_position.back());
    for (const double instant : {0.0, 0.4 * last(), last()})
        for (const Theme theme : {Theme::light, Theme::dark}) {
            const SectionNow now = section_now(recording(), instant, line, 0);
            const ChartLook look{theme, 11.0};
            for (const auto add : {add_stress_now, add_plastic_strain_now, add_moment_so_far}) {
                DrawingList list;
                list.width = 300, list.height = 190;
                list.background = theme_colours(theme).page;
                add(list, {4.0, 4.0, 292.0, 182.0}, now, look);
                tests::check_legible(list, 11.0, 6);
                DrawingList none;
                CHECK_THROWS_AS(add(none, {0.0, 0.0, 60.0, 30.0}, now, look), OutOfRange);
            }
        }
}
