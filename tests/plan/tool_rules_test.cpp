// The rules about tools against geometry worked out by hand, and each on both sides of its limit.

#include <doctest/doctest.h>

#include <cmath>

#include "sim/material/pure_bending.h"
#include "sim/plan/tool_rules.h"
#include "sim/units.h"

using namespace overbend;
using namespace overbend::plan;

namespace {

material::Card mild_steel() {
    material::Card card;
    card.youngs_modulus = 208000.0;
    card.hardening = material::Hollomon{534.1, 0.1586};
    return card;
}

void check_stop(const std::optional<Finding>& f, double figure, double limit, Rule rule) {
    REQUIRE(f);
    CHECK(f->figure == doctest::Approx(figure));
    CHECK(f->limit == doctest::Approx(limit));
    CHECK(f->severity == Severity::stops);
    CHECK(f->rule == rule);
}

}  // namespace

// Flat, the strip rests on the arcs' tops, V/2 away. By hand at the end of a stroke to 90 degrees, with V =
// 20, R = 1, r = 2, s = 1: (10 - 4 sin 45) / cos 45 = 10.142, and 2.5 pi/4 = 1.963 of the bend: 12.106 mm.
TEST_CASE("flange on the die: the end of the stroke asks for most where the opening is wide") {
    const FlangeOnDie wide{20.0, 1.0, 1.0, 2.0, 90.0 * degree};
    CHECK(flange_needed(wide) == doctest::Approx(12.1056).epsilon(1e-4));
    CHECK_FALSE(slips_off(12.11, wide));
    check_stop(slips_off(12.1, wide), 12.1, 12.1056, Rule::flange_on_die);
}

TEST_CASE("flange on the die: the first touch asks for most where the nose fills the groove") {
    const FlangeOnDie narrow{10.0, 1.5, 1.0, 3.0, 90.0 * degree};
    CHECK(flange_needed(narrow) >= 5.0);
    CHECK(flange_needed({10.0, 1.5, 1.0, 3.0, 1e-6}) == doctest::Approx(5.0));
    CHECK_FALSE(slips_off(flange_needed(narrow), narrow));
    CHECK(slips_off(4.9, narrow));
}

// 2 (nose + s) = 7 against an opening of 8, 9 against it.
TEST_CASE("nose in the groove: with the strip round it, and the wedge's angle") {
    const tool::VeeFace face{84.0 * degree, 8.0, 1.0, 0.4};
    const auto punch = [](double angle, double nose) {
        return tool::VeePunch{angle * degree, nose, 60.0, 20.0};
    };
    CHECK_FALSE(does_not_go_in(punch(60.0, 2.5), face, 1.0));
    check_stop(does_not_go_in(punch(60.0, 6.0), face, 1.0), 14.0, 8.0, Rule::nose_width);
    check_stop(does_not_go_in(punch(86.0, 1.0), face, 1.0), 86.0, 84.0, Rule::nose_angle);
}

TEST_CASE("angle of the tools: the angle under load against the largest") {
    CHECK_FALSE(angle_out_of_reach(96.0 * degree, 96.0 * degree, Loaded::estimated));
    check_stop(angle_out_of_reach(96.1 * degree, 96.0 * degree, Loaded::estimated), 96.1, 96.0,
               Rule::angle_of_tools);
}

// What is bent by a moment alone to the loaded angle's curvature springs back to the drawing's: the same
// strip, bent again here.
TEST_CASE("angle of the tools: the estimate springs back to the drawing") {
    material::Card hard = mild_steel();
    hard.hardening = material::Voce{1040.0, 560.2, 25.64};  // as spring-hard stainless strip
    const double thickness = 1.0, drawn = 90.0 * degree;
    for (const material::Card& card : {mild_steel(), hard})
        for (const double radius : {0.2, 2.0, 60.0}) {
            CAPTURE(radius);
            const double loaded = loaded_angle(card, thickness, radius, drawn, 1.0);
            const double curvature = 2.0 / (2.0 * radius + thickness);
            const material::BendingPoint point =
                material::bend_in_pure_moment(card, thickness, {curvature * loaded / drawn}, 15)[0];
            CHECK(point.free_curvature == doctest::Approx(curvature).epsilon(1e-6));
            CHECK(loaded > drawn);
        }
    // DC01 at r/s = 2: the table of springback factors in Tabellenbuch Metall has 0.99, so 91 degrees;
    // spring-hard stainless strip at 60 needs more than as much again.
    CHECK(loaded_angle(mild_steel(), thickness, 2.0, drawn, 1.0) ==
          doctest::Approx(91.0 * degree).epsilon(0.015));
    CHECK(loaded_angle(hard, thickness, 60.0, drawn, 1.0) > 150.0 * degree);
}

// A straight blade 10 mm wide, pressed to 90 degrees round a sharp nose, a like bend of 90 degrees `base`
// away: the flange comes back over the blade at 135 degrees, so it meets the blade's side x = 5 after (x0 -
// 5) / cos 45, where it begins at x0 = base cos 45. For a base of 12 (all radii 0): (8.485 - 5) / 0.7071
// = 4.929 mm.
TEST_CASE("return flange: a straight blade, by hand") {
    const tool::ArcOutline blade = tool::round_corners(
        {{{-5.0, 5.0}, 0.0}, {{0.0, 0.0}, 0.0}, {{5.0, 5.0}, 0.0}, {{5.0, 80.0}, 0.0}, {{-5.0, 80.0}, 0.0}});
    ReturnFlange f{90.0 * degree, 0.0, 12.0, 90.0 * degree, 0.0, 4.9};
    CHECK(longest_return(blade, 0.0, f, 100.0) == doctest::Approx(4.929).epsilon(1e-3));
    CHECK_FALSE(flange_hits_punch(blade, 0.0, f));
    f.flange = 5.0;
    check_stop(flange_hits_punch(blade, 0.0, f), 5.0, longest_return(blade, 0.0, f, 5.0),
               Rule::return_flange);
    // Half the angle, and it still leans out: it never meets the blade.
    f.bend_angle = 20.0 * degree, f.other_angle = 60.0 * degree, f.flange = 60.0;
    CHECK_FALSE(flange_hits_punch(blade, 0.0, f));
}

TEST_CASE("return flange: a wider base lets more pass, and a shank that stands aside too") {
    const tool::ArcOutline wedge = tool::make_outline(tool::VeePunch{60.0 * degree, 1.0, 60.0, 12.0});
    double before = 0.0;
    for (const double base : {12.0, 16.0, 20.0, 30.0}) {
        const double most =
            longest_return(wedge, 1.0, {92.0 * degree, 1.4, base, 90.0 * degree, 1.4, 0.0}, 200.0);
        CHECK(most > before);
        before = most;
    }
    const tool::ArcOutline left =
        tool::make_outline(tool::ChannelPunch{20.0, 1.0, 0.0, 10.0, 6.0, tool::Shank::left, 60.0});
    const ReturnFlange f{90.0 * degree, 2.0, 25.0, 90.0 * degree, 1.4, 0.0};
    CHECK(longest_return(left, 1.0, f, 200.0) > longest_return(tool::mirrored(left), 1.0, f, 200.0) + 1.0);
}
