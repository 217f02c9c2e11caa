// Dies: key dimensions measured on the finished outline, and refusals. The tools are invented.

#include "sim/tool/die.h"

#include <doctest/doctest.h>

#include <cmath>

#include "sim/tool/signed_distance.h"
#include "sim/units.h"
#include "tests/tool/outline_checks.h"

using namespace overbend::tool;
using namespace overbend::tests;
using overbend::degree;

namespace {

VeeDie vee() {
    return {{{86.0 * degree, 10.0, 1.0, 0.5}}, 30.0, 25.0};
}
VeeDie two_way() {
    return {{{86.0 * degree, 10.0, 1.0, 0.5}, {62.0 * degree, 8.0, 0.8, 0.0}}, 30.0, 40.0};
}
OpenDie open_die() {
    return {8.0, 1.0, 10.0, 20.0};
}
ChannelDie channel() {
    return {20.0, 2.0, 12.0, 0.5, 40.0, 20.0};
}

overbend::OutOfRange refused(const VeeDie& die, int face = 1) {
    return refusal([&] { make_outline(die, face); });
}
template <typename Tool>
overbend::OutOfRange refused(const Tool& tool) {
    return refusal([&] { make_outline(tool); });
}

// The groove as its maker must have made it, measured on the outline with that face up.
void check_groove(const ArcOutline& outline, const VeeFace& face) {
    std::vector<Piece> shoulders;
    for (const Piece& arc : arcs_of(outline, face.shoulder_radius)) {
        if (arc.sweep > 0.0 && arc.centre.y() > -face.shoulder_radius - 1e-9) shoulders.push_back(arc);
    }
    REQUIRE(shoulders.size() == 2);
    const Vec2 between = shoulders[0].centre - shoulders[1].centre;
    CHECK(between.norm() == doctest::Approx(face.die_opening));
    CHECK(std::abs(between.y()) < 1e-12);
    CHECK(std::abs(shoulders[0].centre.x() + shoulders[1].centre.x()) < 1e-12);
    CHECK(shoulders[0].centre.y() == doctest::Approx(-face.shoulder_radius));
    for (const Piece& arc : shoulders)
        CHECK(arc.sweep == doctest::Approx(0.5 * (180.0 * degree - face.angle)));

    // On the bisector of the flanks the distance grows with the sine of half the angle.
    const double depth = groove_depth(face);
    CHECK(nearest(outline, {0, -depth}).distance == doctest::Approx(0.0));
    if (face.bottom_radius == 0.0) {
        const Nearest above = nearest(outline, {0, -depth + 1.0});
        CHECK(above.distance == doctest::Approx(std::sin(0.5 * face.angle)));
        CHECK(std::abs(above.normal.x()) == doctest::Approx(std::cos(0.5 * face.angle)));
    }
    // right of the axis the flank's normal leans to the left by half the included angle from the horizontal
    const Vec2 on_flank(0.25 * face.die_opening, -0.5 * depth);
    const Nearest flank = nearest(outline, on_flank);
    CHECK(flank.normal.y() == doctest::Approx(std::sin(0.5 * face.angle)));
    CHECK(flank.normal.x() == doctest::Approx(-std::cos(0.5 * face.angle)));
}

// Mirror-symmetric about x = 0.
void check_symmetrical(const ArcOutline& outline) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    const Vec2 size = outline.box().high - outline.box().low;
    for (int i = 0; i < 300; ++i) {
        const double right = share(random);
        const double up = share(random);
        const Vec2 point = outline.box().low + Vec2(right, up).cwiseProduct(size);
        const double mirror = nearest(outline, Vec2(-point.x(), point.y())).distance;
        CHECK(std::abs(nearest(outline, point).distance - mirror) < 1e-12);
    }
}

}  // namespace

TEST_SUITE("tool") {
    TEST_CASE("V die: opening, flanks and shoulders as given") {
        for (const double angle : {40.0, 60.0, 86.0, 120.0, 150.0}) {
            for (const double bottom : {0.0, 0.5}) {
                CAPTURE(angle);
                CAPTURE(bottom);
                VeeDie die = vee();
                die.faces[0].angle = angle * degree;
                die.faces[0].bottom_radius = bottom;
                const ArcOutline outline = make_outline(die, 1);
                check_sound(outline);
                check_groove(outline, die.faces[0]);
                check_symmetrical(outline);
                CHECK(std::abs(outline.box().high.y()) < 1e-12);
                CHECK(outline.box().low.y() == doctest::Approx(-25.0));
                CHECK(outline.box().high.x() == doctest::Approx(15.0));
                CHECK(nearest(outline, {10, 2}).distance == doctest::Approx(2.0));
            }
        }
    }

    // Area   the block less the groove: the sharp wedge, less what the arcs take of its three corners. An arc
    //        of radius r in a corner that turns by a takes r^2 (tan(a/2) - a/2).
    TEST_CASE("V die: the area is the block's less the groove's") {
        const VeeDie die = vee();
        const VeeFace& face = die.faces[0];
        const double turn = 0.5 * (180.0 * degree - face.angle);
        const double half_sharp = 5.0 - std::tan(0.5 * turn);
        const double wedge = half_sharp * half_sharp / std::tan(0.5 * face.angle);
        const double at_shoulder = std::tan(0.5 * turn) - 0.5 * turn;
        const double at_bottom = 0.25 * (std::tan(turn) - turn);
        CHECK(make_outline(die, 1).area() ==
              doctest::Approx(30.0 * 25.0 - wedge - 2.0 * at_shoulder + at_bottom).epsilon(1e-12));
    }

    TEST_CASE("V die: two faces are one block turned over") {
        const VeeDie die = two_way();
        const ArcOutline up = make_outline(die, 1);
        const ArcOutline down = make_outline(die, 2);
        check_sound(up);
        check_sound(down);
        check_groove(up, die.faces[0]);
        check_groove(down, die.faces[1]);
        check_symmetrical(up);
        check_symmetrical(down);
        const ArcOutline turned = shifted(half_turned(up), {0, -die.height});
        CHECK(turned.area() == doctest::Approx(down.area()));
        const std::vector<Vec2> polygon = sample(down, 0.01);
        for (const Vec2& point : polygon) CHECK(std::abs(nearest(turned, point).distance) < 1e-9);
        for (const Vec2& point : sample(turned, 0.01)) CHECK(std::abs(nearest(down, point).distance) < 1e-9);
    }

    TEST_CASE("V die: refusals") {
        VeeDie die = vee();
        die.faces[0].shoulder_radius = 7.0;  // at most 5 / cos 43 deg = 6.837
        CHECK(says(refused(die).what(), "give less than 6.83664 mm"));
        die = vee();
        die.width = 40.0;
        die.faces[0].bottom_radius = 5.9;
        CHECK(says(refused(die).what(), "bottom radius"));
        CHECK(says(refused(die).what(), "at most 5.83664 mm fits"));
        die.faces[0].bottom_radius = 5.836637;
        check_sound(make_outline(die, 1));

        die = vee();
        die.width = 12.0;
        CHECK(says(refused(die).what(), "give more than 12 mm"));
        die.width = 12.1;
        check_sound(make_outline(die, 1));

        die = vee();
        die.height = groove_depth(die.faces[0]) - 0.01;
        CHECK(says(refused(die).name, "die height"));
        die.height = groove_depth(die.faces[0]) + 0.01;
        check_sound(make_outline(die, 1));

        die = vee();
        CHECK(says(refused(die, 0).what(), "this die has only face 1"));
        CHECK(says(refused(die, 2).what(), "this die has only face 1"));
        die.faces.clear();
        CHECK(says(refused(die).what(), "give one or two"));
        die.faces.resize(3, vee().faces[0]);
        CHECK(says(refused(die).what(), "give one or two"));
    }

    TEST_CASE("V die: values out of their ranges are refused by name") {
        const auto with = [](double VeeFace::*member, double value) {
            VeeDie die = vee();
            die.faces[0].*member = value;
            CHECK(std::string(refusal([&] { groove_depth(die.faces[0]); }).what()) == refused(die).what());
            return std::string(refused(die).what());
        };
        CHECK(says(with(&VeeFace::angle, 0.0), "die angle"));
        CHECK(says(with(&VeeFace::angle, 180.0 * degree), "less than 180 deg"));
        CHECK(says(with(&VeeFace::die_opening, 0.0), "die opening"));
        CHECK(says(with(&VeeFace::shoulder_radius, 0.0), "shoulder radius"));
        CHECK(
            says(with(&VeeFace::bottom_radius, -0.1), "bottom radius: -0.1 mm cannot be; give 0 mm or more"));
        CHECK(says(with(&VeeFace::bottom_radius, INFINITY), "give 0 mm or more"));
        VeeDie die = vee();
        die.width = NAN;
        CHECK(says(refused(die).what(), "die width"));
        die = vee();
        die.height = -1.0;
        CHECK(says(refused(die).what(), "die height"));
    }

    TEST_CASE("V die: grooves of a two-way die keep a quarter of its height between them") {
        VeeDie die = two_way();
        const double depths = groove_depth(die.faces[0]) + groove_depth(die.faces[1]);
        die.height = depths / 0.75 * 0.999;
        CHECK(says(refused(die).what(), "less than a quarter"));
        die.height = depths / 0.75 * 1.001;
        check_sound(make_outline(die, 1));
        check_sound(make_outline(die, 2));
        CHECK(says(refused(die, 3).what(), "give 1 or 2"));
        die.faces[1].die_opening = 40.0;  // the block must be wide enough for both
        CHECK(says(refused(die).name, "die"));
    }

    TEST_CASE("open die: opening, walls and slot as given") {
        const ArcOutline outline = make_outline(open_die());
        check_sound(outline);
        check_symmetrical(outline);
        const std::vector<Piece> shoulders = arcs_of(outline, 1.0);
        REQUIRE(shoulders.size() == 2);
        CHECK((shoulders[0].centre - shoulders[1].centre).norm() == doctest::Approx(8.0));
        CHECK(shoulders[0].centre.y() == doctest::Approx(-1.0));
        CHECK(nearest(outline, {0, -5}).distance == doctest::Approx(3.0));
        CHECK(nearest(outline, {0, -9}).foot.y() == doctest::Approx(-10.0));
        CHECK(nearest(outline, {8, 1}).distance == doctest::Approx(1.0));
        // block, less the slot, less what the arcs take of two corners: r^2 (1 - pi/4) each
        CHECK(outline.area() == doctest::Approx(20.0 * 12.5 - 60.0 - 2.0 * (1.0 - 45.0 * degree)));
    }

    TEST_CASE("open die: refusals") {
        const auto with = [](double OpenDie::*member, double value) {
            OpenDie die = open_die();
            die.*member = value;
            return std::string(refused(die).what());
        };
        CHECK(says(with(&OpenDie::shoulder_radius, 4.0), "give less than 4 mm"));
        CHECK(says(with(&OpenDie::depth, 1.0), "give more than 1 mm"));
        CHECK(says(with(&OpenDie::width, 10.0), "give more than 10 mm"));
        CHECK(says(with(&OpenDie::die_opening, 0.0), "die opening"));
        CHECK(says(with(&OpenDie::shoulder_radius, -1.0), "shoulder radius"));
        CHECK(says(with(&OpenDie::depth, NAN), "slot depth"));
        CHECK(says(with(&OpenDie::width, 0.0), "die width"));
    }

    TEST_CASE("channel die: walls, shoulders and crowned floor as given") {
        for (const double crown : {0.0, 0.5, 3.0}) {
            CAPTURE(crown);
            ChannelDie die = channel();
            die.floor_crown = crown;
            const ArcOutline outline = make_outline(die);
            check_sound(outline);
            check_symmetrical(outline);
            const std::vector<Piece> shoulders = arcs_of(outline, 2.0);
            REQUIRE(shoulders.size() == 2);
            CHECK((shoulders[0].centre - shoulders[1].centre).norm() == doctest::Approx(24.0));
            CHECK(nearest(outline, {9.5, -5}).distance == doctest::Approx(0.5));
            CHECK(nearest(outline, {-9.5, -5}).distance == doctest::Approx(0.5));
            const Nearest floor = nearest(outline, {0, -11.0 + crown});
            CHECK(floor.distance == doctest::Approx(1.0));
            CHECK(floor.foot.y() == doctest::Approx(-12.0 + crown));
            CHECK(std::abs(nearest(outline, {10, -12}).distance) < 1e-12);
            CHECK(nearest(outline, {15, 1}).distance == doctest::Approx(1.0));
            CHECK(outline.box().low.y() == doctest::Approx(-20.0));
        }
    }

    TEST_CASE("channel die: refusals") {
        const auto with = [](double ChannelDie::*member, double value) {
            ChannelDie die = channel();
            die.*member = value;
            return std::string(refused(die).what());
        };
        CHECK(says(with(&ChannelDie::depth, 2.0), "give more than 2 mm"));
        CHECK(says(with(&ChannelDie::floor_crown, 10.0), "less than the walls are high, 10 mm"));
        CHECK(says(with(&ChannelDie::floor_crown, -1.0), "floor crown"));
        CHECK(says(with(&ChannelDie::width, 24.0), "give more than 24 mm"));
        CHECK(says(with(&ChannelDie::height, 12.0), "give more than 12 mm"));
        for (double ChannelDie::*member : {&ChannelDie::die_opening, &ChannelDie::shoulder_radius,
                                           &ChannelDie::depth, &ChannelDie::width, &ChannelDie::height}) {
            CHECK(says(with(member, 0.0), "more than 0 mm"));
            CHECK(says(with(member, NAN), "more than 0 mm"));
        }
        ChannelDie deep = channel();
        deep.depth = 30.0;
        deep.height = 40.0;
        deep.floor_crown = 11.0;
        CHECK(says(refused(deep).what(), "at most half the opening, 10 mm"));
    }
}
