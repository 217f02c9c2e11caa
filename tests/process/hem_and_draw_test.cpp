// Hems, whose second stroke presses what the first one bent, and draws, whose walls are bent and
// straightened.

#include "scenes/job/run/strip_bends.h"
#include "sim/units.h"
#include "tests/process/one_strip.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;
using namespace overbend::tests;

TEST_CASE("a hem's second stroke begins with what the first one left") {
    const HemBend b = plain<HemBend>();
    const StripStroke first = hem_first_stroke(b);
    check_placed(first.scene);
    const stroke::StrokeResult bent = stroke::press(first.scene, {});
    check_done(bent);
    const StripStroke second = hem_second_stroke(b, bent.free);
    check_placed(second.scene, 0.03);
    CHECK(second.scene.touches_itself);
    // The flange lies flat on the die, the hem above it.
    const strip::StripState& s = second.scene.strip;
    CHECK(std::abs(s.theta.back()) < 1.0 * degree);
    CHECK(std::abs(s.theta.back() - s.theta.front() - 150.0 * degree) < 0.1 * degree);
    CHECK(s.y.front() > 2.0 * b.thickness);
    CHECK(std::abs(s.y.back() - 0.5 * b.thickness) < 0.1 * b.thickness);
}

TEST_CASE("an open hem is laid to its gap") {
    HemBend b = plain<HemBend>();
    b.nose_radius = 0.8;
    const StripResult r = bend_hem(b, {1.2, {}}, {});
    check_done(r.stroke);
    // The fold is a drop: the flanges lean together, by 10 degrees here.
    CHECK(r.bends[0].free / degree - 180.0 > 0.0);
    CHECK(r.bends[0].free / degree - 180.0 < 15.0);
    REQUIRE(r.measures.size() == 1);
    CHECK(std::abs(r.measures[0].value - 1.2) < 0.5);
}

TEST_CASE("a hem is closed by force: its faces meet and stay together") {
    HemBend b = plain<HemBend>();
    b.nose_radius = 1.0;
    b.die_opening = 9.0;
    const StripResult r = bend_hem(b, {{}, 323.0}, {});
    check_done(r.stroke);
    CHECK(std::abs(r.bends[0].free / degree - 180.0) < 3.0);
    REQUIRE(r.measures.size() == 1);
    CHECK(r.measures[0].value < 0.08 * b.thickness);  // as near as the finite-element hem is met
}

TEST_CASE("hems that cannot be are refused") {
    check_refused("hem", [] {
        HemBend b = plain<HemBend>();
        b.hem = 4.0;
        hem_first_stroke(b);
    });
    check_refused("bend angle of the first stroke", [] {
        HemBend b = plain<HemBend>();
        b.first_free = 90.0 * degree;
        hem_first_stroke(b);
    });
}

TEST_CASE("a drawn strip's corners open, its walls curl") {
    DrawBend b = plain<DrawBend>();
    b.thickness = 0.8;
    b.punch_width = 30.0;
    b.flange = 30.0;
    b.corner_radius = b.shoulder_radius = 3.0;
    b.travel = 15.0;
    b.clamp.preload = 15.0;
    const StripStroke s = draw_stroke(b);
    check_placed(s.scene);
    check_symmetric(s.scene);
    REQUIRE(s.scene.tools.size() == 4);
    const StripResult r = bend_draw(b, {});
    check_done(r.stroke);
    REQUIRE(r.bends.size() == 4);
    CHECK(r.bends[1].springback() > 0.5 * degree);
    CHECK(std::abs(r.bends[1].free - r.bends[2].free) < 0.5 * degree);
    CHECK(std::abs(r.bends[0].free - r.bends[3].free) < 0.5 * degree);
    REQUIRE(r.measures.size() == 1);
    CHECK(r.measures[0].value > 0.0);
}

TEST_CASE("draws that cannot be are refused") {
    check_refused("flange", [] {
        DrawBend b = plain<DrawBend>();
        b.clamp.preload = 20.0;
        b.flange = 30.0;
        draw_stroke(b);
    });
    check_refused("travel", [] {
        DrawBend b = plain<DrawBend>();
        b.clamp.preload = 20.0;
        b.travel = 10.0;
        draw_stroke(b);
    });
    check_refused("spring", [] { draw_stroke(plain<DrawBend>()); });
}

TEST_CASE("a hem whose leg is pressed open again is none") {
    HemBend b;
    b.material = read_card("dc04", ".");
    b.die_opening = 9.0, b.nose_radius = 1.0;
    b.first_free = 105.0 * degree;
    HemStop stop;
    stop.gap = 0.0;
    const StripResult r = bend_hem(b, stop, {});
    CHECK(r.stroke.outcome == stroke::Outcome::pressed_open);
    CHECK(r.stroke.solved());  // the strip is as the tools leave it
    CHECK(r.stroke.reason.find("bend it further in the first stroke") != std::string::npos);
    CHECK(r.measures.empty());
    CHECK(r.bends.front().free < 30.0 * degree);
}

TEST_CASE("closed tools that press on are given up") {
    OffsetBend b = plain<OffsetBend>();
    b.offset = 3.0, b.angle = 80.0 * degree, b.corner_radius = 0.2;
    stroke::Stop stop;
    stop.kind = stroke::StopKind::travel, stop.value = 6.0;
    const StripResult r = press_strip(offset_stroke(b), stop, {});
    CHECK(r.stroke.outcome == stroke::Outcome::force_limit);
    CHECK(r.stroke.increments < 3000);
}
