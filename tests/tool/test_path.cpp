// Paths of points with corner radii and bulges.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "sim/tool/arc_outline.h"
#include "sim/units.h"
#include "tests/tool/outline_checks.h"

using namespace overbend::tool;
using namespace overbend::tests;
using overbend::degree;

namespace {

std::vector<Corner> rectangle(double width, double height, double radius) {
    return {{{0, 0}, radius}, {{width, 0}, radius}, {{width, height}, radius}, {{0, height}, radius}};
}

}  // namespace

TEST_SUITE("tool") {
    TEST_CASE("rounded corners are tangent arcs") {
        const ArcOutline outline = round_corners(rectangle(6, 4, 1.0));
        check_sound(outline);
        CHECK(outline.pieces().size() == 8);
        CHECK(outline.area() == doctest::Approx(24.0 - 4.0 + 180.0 * degree));
        for (const Joint& joint : outline.joints()) CHECK(joint.turn == Turn::smooth);
    }

    TEST_CASE("corners are the same whichever way they are walked") {
        std::vector<Corner> corners = {
            {{0, 0}, 0.5}, {{5, 0}, 1.0}, {{5, 5}, 0.3}, {{2.5, 2}, 0.8}, {{0, 5}, 0.0}};
        const ArcOutline one = round_corners(corners);
        std::reverse(corners.begin(), corners.end());
        const ArcOutline other = round_corners(corners);
        check_sound(one);
        check_sound(other);
        CHECK(one.area() == doctest::Approx(other.area()));
        CHECK(arcs_of(one, 0.8).front().sweep < 0.0);  // the hollow corner
        CHECK(arcs_of(other, 0.8).front().sweep == doctest::Approx(arcs_of(one, 0.8).front().sweep));
    }

    TEST_CASE("radii that use up the sides leave no lines between") {
        const ArcOutline outline = round_corners(rectangle(4, 4, 2.0));
        check_sound(outline);
        CHECK(outline.pieces().size() == 4);
        CHECK(outline.area() == doctest::Approx(4.0 * 180.0 * degree));
    }

    TEST_CASE("a corner that does not turn is not rounded") {
        const ArcOutline outline =
            round_corners({{{0, 0}, 0.0}, {{2, 0}, 5.0}, {{4, 0}, 0.0}, {{4, 3}, 0.0}});
        check_sound(outline);
        CHECK(outline.pieces().size() == 4);
    }

    TEST_CASE("a bulge is the tangent of a quarter of the sweep") {
        const ArcOutline disc = from_points({{{-3, 0}, 0.0, 1.0}, {{3, 0}, 0.0, 1.0}});
        check_sound(disc);
        CHECK(disc.area() == doctest::Approx(9.0 * 180.0 * degree));
        const double quarter = std::tan(22.5 * degree);
        const auto cornered = [](double bulge) {
            return from_points({{{-1, -1}, 0.0, 0.0},
                                {{2, -1}, 0.0, 0.0},
                                {{2, 0}, 0.0, bulge},
                                {{0, 2}, 0.0, 0.0},
                                {{-1, 2}, 0.0, 0.0}});
        };
        const ArcOutline rounded = cornered(quarter);
        check_sound(rounded);
        const Piece arc = arcs_of(rounded, 2.0).at(0);
        CHECK(arc.centre.norm() < 1e-12);
        CHECK(arc.sweep == doctest::Approx(90.0 * degree));
        const ArcOutline hollow = cornered(-quarter);
        check_sound(hollow);
        CHECK((arcs_of(hollow, 2.0).at(0).centre - Vec2(2, 2)).norm() < 1e-12);
        CHECK(rounded.area() + hollow.area() == doctest::Approx(14.0));
    }

    TEST_CASE("arcs that miss the tangent by the rounding of a drawing are taken") {
        // a slot 10 long and 4 wide, its ends bulged a little more or less than half a turn
        for (const double bulge : {0.999, 0.9999999, 1.0, 1.0000001, 1.001}) {
            CAPTURE(bulge);
            const ArcOutline slot = from_points(
                {{{0, 0}, 0.0, 0.0}, {{10, 0}, 0.0, bulge}, {{10, 4}, 0.0, 0.0}, {{0, 4}, 0.0, bulge}});
            check_sound(slot);
            CHECK(slot.area() == doctest::Approx(40.0 + 4.0 * 180.0 * degree).epsilon(1e-3));
        }
    }

    TEST_CASE("random paths make sound outlines") {
        std::mt19937 random(11);
        int made = 0;
        for (int i = 0; i < 200; ++i) {
            CAPTURE(i);
            try {
                check_sound(random_outline(random));
                ++made;
            } catch (const overbend::OutOfRange& refused) {
                CHECK(says(refused.what(), "crosses or touches"));
            }
        }
        CHECK(made > 150);
    }

    TEST_CASE("a radius that is too large is refused with the largest that fits") {
        // sides 6 and 4: the corner at (6, 0) shares its short side with a radius of 1
        std::vector<Corner> corners = {{{0, 0}, 0.0}, {{6, 0}, 5.0}, {{6, 4}, 1.0}, {{0, 4}, 0.0}};
        const overbend::OutOfRange refused = refusal([&] { round_corners(corners); });
        CHECK(says(refused.name, "corner 2 at (6, 0)"));
        CHECK(says(refused.right, "at most 3 mm fits"));
        corners[1].radius = 3.0;
        check_sound(round_corners(corners));
        corners[1].radius = 3.0 + 1e-6;
        CHECK(says(refusal([&] { round_corners(corners); }).right, "at most 3 mm fits"));

        // neither of two fits on its side: half of it is left to each
        corners = {{{0, 0}, 0.0}, {{6, 0}, 9.0}, {{6, 4}, 5.0}, {{0, 4}, 0.0}};
        CHECK(says(refusal([&] { round_corners(corners); }).right, "at most 2 mm fits"));
    }

    TEST_CASE("paths that cannot be are refused") {
        const auto words = [](const std::vector<PathPoint>& points) {
            return std::string(refusal([&] { from_points(points); }).what());
        };
        CHECK(says(words({{{0, 0}, 0.0, 0.0}, {{1, 0}, 0.0, 0.0}}), "at least three"));
        CHECK(says(words({{{0, 0}, 0.0, 1.0}}), "at least three"));
        CHECK(says(words({{{0, 0}, 0.0, 0.0}, {{2, 0}, 0.0, 0.0}, {{2, 0}, 0.0, 0.0}, {{0, 2}, 0.0, 0.0}}),
                   "corner 2 at (2, 0) mm: the next corner is at the same place"));
        CHECK(says(words({{{0, 0}, 0.0, 0.0}, {{2, 0}, -1.0, 0.0}, {{2, 2}, 0.0, 0.0}}), "0 mm or more"));
        CHECK(says(words({{{0, 0}, 0.0, 0.0}, {{2, 0}, 0.5, 0.3}, {{2, 2}, 0.0, 0.0}}), "end of an arc"));
        CHECK(says(words({{{0, 0}, 0.0, 0.3}, {{2, 0}, 0.5, 0.0}, {{2, 2}, 0.0, 0.0}}), "end of an arc"));
        CHECK(says(words({{{0, 0}, 0.0, 0.0}, {{2, 0}, 0.5, 0.0}, {{1, 0}, 0.0, 0.0}, {{1, 2}, 0.0, 0.0}}),
                   "doubles back"));
        CHECK(says(words({{{0, 0}, 0.0, 0.0}, {{NAN, 0}, 0.0, 0.0}, {{1, 2}, 0.0, 0.0}}), "not a number"));
        CHECK(says(words({{{0, 0}, 0.0, 0.0}, {{1, 0}, 0.0, INFINITY}, {{1, 2}, 0.0, 0.0}}), "not a number"));
        CHECK(says(words({{{0, 0}, 0.0, 0.0}, {{3, 0}, 0.0, 0.0}, {{0, 2}, 0.0, 0.0}, {{3, 2}, 0.0, 0.0}}),
                   "crosses"));
    }
}
