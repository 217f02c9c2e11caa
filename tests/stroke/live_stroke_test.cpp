// A stroke pressed by hand is the same as one that was pressed in one go.

#include "sim/stroke/live_stroke.h"

#include <doctest/doctest.h>

#include "scenes/files/case/read_card.h"
#include "scenes/job/run/profile.h"
#include "scenes/job/run/strip_bends.h"
#include "sim/units.h"

using namespace overbend;

namespace {

job::StripStroke vee() {
    job::VeeBend bend;
    bend.material = files::read_card("dc01", ".");
    bend.layers = 11;
    bend.elements_per_thickness = 10.0;
    return job::vee_stroke(bend);
}

double angle(const job::StripStroke& v, const stroke::Recording& r, const stroke::State& s) {
    return job::bend_shape(r, s, v.bends[0].left, v.bends[0].right).angle;
}

void same_as_in_one_go(const job::StripStroke& v, stroke::LiveStroke& live, double travel) {
    CAPTURE(travel);
    REQUIRE(live.press_to(travel) == doctest::Approx(travel));
    const stroke::StrokeResult by_hand = live.release();
    const stroke::StrokeResult at_once = job::press_strip(v, {stroke::StopKind::travel, travel}, {}).stroke;
    REQUIRE(by_hand.solved());
    CHECK(angle(v, by_hand.recording, by_hand.recording.states.back()) ==
          doctest::Approx(angle(v, at_once.recording, at_once.recording.states.back())).epsilon(1e-6));
    CHECK(by_hand.stop_force == doctest::Approx(at_once.stop_force).epsilon(1e-5));
    REQUIRE(by_hand.recording.states.size() == at_once.recording.states.size());
    for (std::size_t i = 0; i < by_hand.recording.states.size(); ++i) {
        CHECK(by_hand.recording.states[i].phase == at_once.recording.states[i].phase);
        CHECK(by_hand.recording.states[i].travel == doctest::Approx(at_once.recording.states[i].travel));
    }
    CHECK(by_hand.curve.size() == at_once.curve.size());
}

}  // namespace

TEST_CASE("pressed down little by little, up and down again") {
    const job::StripStroke v = vee();
    stroke::LiveStroke live(v.scene, {});
    for (const double travel : {0.02, 0.3, 1.0, 1.01, 2.5, 1.4, 3.9, 0.7, 3.3})
        same_as_in_one_go(v, live, travel);
}

TEST_CASE("as far as there is room, and from there back") {
    job::VeeBend bend;
    bend.material = files::read_card("dc01", ".");
    bend.die_angle = 88.0 * degree;
    bend.punch_angle = 80.0 * degree;
    const job::StripStroke v = job::vee_stroke(bend);
    stroke::LiveStroke live(v.scene, {});
    const double held = live.press_to(100.0);
    CHECK(held <= v.scene.stop.travel_limit);
    CHECK(held > 2.0);
    CHECK_FALSE(live.held_by().empty());
    CHECK(live.press_to(1.0) == doctest::Approx(1.0));
    CHECK(live.held_by().empty());
    CHECK(live.release().solved());
}
