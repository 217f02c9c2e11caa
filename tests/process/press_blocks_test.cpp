// What stands about the tools, and where; and the gauge against the strip as it lies.

#include "scenes/job/run/press_blocks.h"

#include <doctest/doctest.h>

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"
#include "scenes/job/run/scene.h"
#include "sim/strip/place.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

const tool::RigidTool* with_name(const tool::ToolSet& tools, const std::string& name) {
    for (const tool::RigidTool& t : tools)
        if (t.name == name) return &t;
    return nullptr;
}

Case angle_in_press() {
    Case c = read_case("cases/one-bend-dc01/case.toml");
    c.press = Press{"press",
                    60.0,
                    80.0,
                    PressBlock{24.0, 45.0},
                    PressBlock{60.0, 30.0},
                    PressBlock{70.0, 100.0},
                    PressBlock{90.0, 200.0},
                    Gauge{6.0, 30.0, 60.0}};
    return c;
}

stroke::StrokeScene scene_of(const Case& c) {
    const Blank blank = make_blank(c);
    return make_scene(c, blank, c.steps[0], make_strip(c, blank),
                      std::vector<bool>(c.part.bends.size(), false));
}

double top(const tool::RigidTool& t) {
    return t.position.y() + t.outline.box().high.y();
}
double bottom(const tool::RigidTool& t) {
    return t.position.y() + t.outline.box().low.y();
}

}  // namespace

TEST_CASE("holders, ram and bed stand on one another, and go with the ram or stay") {
    const stroke::StrokeScene scene = scene_of(angle_in_press());
    const tool::RigidTool &punch = scene.tools[0], &die = scene.tools[1];
    const tool::RigidTool *holder = with_name(scene.tools, "punch holder"),
                          *ram = with_name(scene.tools, "ram");
    const tool::RigidTool *below = with_name(scene.tools, "die holder"), *bed = with_name(scene.tools, "bed");
    REQUIRE((holder && ram && below && bed));
    CHECK(bottom(*holder) == doctest::Approx(top(punch)));
    CHECK(bottom(*ram) == doctest::Approx(top(*holder)));
    CHECK(top(*below) == doctest::Approx(bottom(die)));
    CHECK(top(*bed) == doctest::Approx(bottom(*below)));
    CHECK(holder->moves_with_ram());
    CHECK(ram->moves_with_ram());
    CHECK_FALSE(below->moves_with_ram());
    CHECK_FALSE(bed->moves_with_ram());
}

TEST_CASE("the gauge touches the strip's end, and draws back once it is pressed") {
    const Case c = angle_in_press();
    const stroke::StrokeScene scene = scene_of(c);
    const double end = scene.strip.x.back();
    CHECK(gauge_distance(scene.tools) == doctest::Approx(end));
    CHECK_FALSE(gauge_finds_no_edge(c, scene.strip));
    const tool::RigidTool* gauge = with_name(scene.tools, "gauge");
    REQUIRE(gauge);
    CHECK(stroke::tool_position(*gauge, 0.0, 0.0, stroke::Phase::placed).x() == gauge->position.x());
    CHECK(stroke::tool_position(*gauge, 1.0, 0.0, stroke::Phase::pressing).x() == gauge->position.x() + 60.0);
}

TEST_CASE("a strip that goes on below the gauge has no edge for it, and that is told") {
    const Case c = angle_in_press();
    stroke::StrokeScene scene = scene_of(c);
    strip::StripState& s = scene.strip;
    for (int i = 0; i < s.nodes(); ++i)
        if (s.x[i] > 20.0) s.y[i] -= 0.8 * (s.x[i] - 20.0);  // falls away to the right
    CHECK(gauge_finds_no_edge(c, s));
    CHECK(gauge_at(c, s).empty());
}

TEST_CASE("what stands about the tools does not change how they press") {
    const Case bare = read_case("cases/one-bend-dc01/case.toml");
    const JobResult alone = run_process(bare, {}), in_press = run_process(angle_in_press(), {});
    REQUIRE(alone.solved);
    CHECK(alone.finished_angle == in_press.finished_angle);
    CHECK(alone.steps[0].stroke.iterations == in_press.steps[0].stroke.iterations);
    CHECK(in_press.steps[0].gauge > 0.0);
    CHECK(in_press.feasible());
}

TEST_CASE("a ram too wide for the flange that swings up is hit") {
    Case c = angle_in_press();
    c.part.flats = {60.0, 60.0};
    c.press->punch_holder = PressBlock{24.0, 1.0};
    c.tools[0].shape = tool::VeePunch{0.9, 1.0, 20.0, 12.0};
    c.press->ram = PressBlock{160.0, 100.0};
    const JobResult job = run_process(c, {});
    REQUIRE(job.solved);
    REQUIRE_FALSE(job.steps[0].interferences.empty());
    CHECK(why_not(c, job.findings).find("deep in the ram 'ram' at") != std::string::npos);
}
