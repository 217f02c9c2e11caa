// A radius die and its punch: sizes measured on the outlines, tangency where arcs meet, and refusals. The
// tools are invented.

#include "sim/tool/radius_tools.h"

#include <doctest/doctest.h>

#include <cmath>

#include "sim/tool/signed_distance.h"
#include "sim/units.h"
#include "tests/tool/outline_checks.h"

using namespace overbend::tool;
using namespace overbend::tests;

namespace {

RadiusDie die() {
    return {12.0, 20.0, 2.0, 40.0, 30.0};
}
RadiusPunch punch() {
    return {11.0, 18.0, 60.0};
}

template <class Tool>
overbend::OutOfRange refused(const Tool& tool) {
    return refusal([&] { make_outline(tool); });
}

}  // namespace

TEST_CASE("a radius die: the groove's arc has its radius, opening and depth") {
    const ArcOutline outline = make_outline(die());
    check_sound(outline);
    const std::vector<Piece> grooves = arcs_of(outline, 12.0);
    REQUIRE(grooves.size() == 1);
    CHECK(grooves.front().sweep == doctest::Approx(-2.0 * half_groove(die())));
    CHECK(std::abs(grooves.front().centre.x()) < 1e-12);
    // by hand: sin = 10 / 14, depth 14 (1 - cos)
    CHECK(half_groove(die()) == doctest::Approx(0.795603));
    CHECK(groove_depth(die()) == doctest::Approx(4.202041));
    CHECK(std::abs(nearest(outline, {0.0, -groove_depth(die())}).distance) < 1e-12);
    const std::vector<Piece> shoulders = arcs_of(outline, 2.0);
    REQUIRE(shoulders.size() == 2);
    CHECK((shoulders[0].centre - shoulders[1].centre).norm() == doctest::Approx(20.0));
}

TEST_CASE("a radius die: no corner from one top face to the other, whatever its sizes") {
    for (const double groove : {3.0, 12.0, 60.0})
        for (const double shoulder : {0.2, 2.0, 8.0})
            for (const double part : {0.1, 0.6, 0.999}) {
                CAPTURE(groove);
                CAPTURE(shoulder);
                CAPTURE(part);
                const double opening = part * 2.0 * (groove + shoulder);
                const ArcOutline outline =
                    make_outline(RadiusDie{groove, opening, shoulder, opening + 20.0, 200.0});
                check_sound(outline);
                int smooth = 0;
                for (const Joint& joint : outline.joints()) smooth += joint.turn == Turn::smooth;
                CHECK(smooth == 4);  // both ends of both shoulders
            }
}

TEST_CASE("a radius punch: its arc reaches from side to side") {
    const ArcOutline outline = make_outline(punch());
    check_sound(outline);
    const std::vector<Piece> noses = arcs_of(outline, 11.0);
    REQUIRE(noses.size() == 1);
    CHECK(noses.front().centre.y() == doctest::Approx(11.0));
    CHECK(std::abs(nearest(outline, {0.0, 0.0}).distance) < 1e-12);
    CHECK(outline.box().high.x() - outline.box().low.x() == doctest::Approx(18.0));
    CHECK(outline.box().high.y() == doctest::Approx(60.0));
    // a full round nose runs into its sides
    int smooth = 0;
    const ArcOutline round = make_outline(RadiusPunch{9.0, 18.0, 60.0});
    for (const Joint& joint : round.joints()) smooth += joint.turn == Turn::smooth;
    CHECK(smooth == 2);
}

TEST_CASE("radius tools that cannot be made are refused, with what is possible") {
    RadiusDie wide = die();
    wide.die_opening = 28.0;
    CHECK(says(refused(wide).right, "28 mm"));
    RadiusDie narrow = die();
    narrow.width = 20.0;
    CHECK(refused(narrow).name == "die width");
    RadiusDie shallow = die();
    shallow.height = 4.2;
    CHECK(says(refused(shallow).right, "4.20204"));
    for (double RadiusDie::*size : {&RadiusDie::groove_radius, &RadiusDie::die_opening,
                                    &RadiusDie::shoulder_radius, &RadiusDie::width, &RadiusDie::height})
        for (const double bad : {0.0, -1.0, std::nan("")}) {
            RadiusDie spoilt = die();
            spoilt.*size = bad;
            refused(spoilt);
        }
    RadiusPunch plate = punch();
    plate.width = 22.1;
    CHECK(says(refused(plate).right, "22 mm"));
    RadiusPunch low = punch();
    low.height = 4.6;
    CHECK(refused(low).name == "punch height");
    for (double RadiusPunch::*size : {&RadiusPunch::nose_radius, &RadiusPunch::width, &RadiusPunch::height})
        for (const double bad : {0.0, -1.0, std::nan("")}) {
            RadiusPunch spoilt = punch();
            spoilt.*size = bad;
            refused(spoilt);
        }
}

TEST_CASE("radius tools pair when the strip lies in the groove and no edge marks it") {
    CHECK_NOTHROW(check_pair(punch(), die(), 1.0));
    CHECK(says(refusal([] { check_pair(punch(), die(), 1.1); }).right, "10.9 mm"));
    RadiusPunch narrow = punch();
    narrow.width = 15.0;
    CHECK(says(refusal([&] { check_pair(narrow, die(), 1.0); }).right, "15.7143"));
    CHECK(says(refusal([] { check_pair(punch(), die(), 12.5); }).right, "more than 12.5 mm"));
}
