// Relieved V punches: area and sides against what was worked out by hand from the figures, the mirrored
// one, refusals. The tools are invented.

#include <doctest/doctest.h>

#include <cmath>

#include "sim/tool/punch.h"
#include "sim/tool/signed_distance.h"
#include "sim/units.h"
#include "tests/tool/outline_checks.h"

using namespace overbend::tool;
using namespace overbend::tests;
using overbend::degree;

namespace {

// 90 degrees: the wedge is as wide on either side as it is high above the point where its flanks meet.
VeePunch relieved(Side side) {
    VeePunch punch{90.0 * degree, 1.0, 60.0, 12.0};
    punch.relief = Relief{side, 8.0, 44.0, 4.0, 5.0, 0.0};
    return punch;
}

double straight_area() {
    return make_outline(VeePunch{90.0 * degree, 1.0, 60.0, 12.0}).area();
}

// The straight punch changed by one figure of its relief is refused with these words.
void check_refused(double Relief::*figure, double value, const std::string& name, const std::string& right) {
    VeePunch punch = relieved(Side::right);
    (*punch.relief).*figure = value;
    const overbend::OutOfRange error = refusal([&] { make_outline(punch); });
    CAPTURE(std::string(error.what()));
    CHECK(error.name == name);
    CHECK(says(error.right, right));
}

}  // namespace

TEST_SUITE("tool") {
    TEST_CASE("relieved V punch: what is taken off and put on, as worked out by hand") {
        const ArcOutline outline = make_outline(relieved(Side::right));
        check_sound(outline);
        // Off: from the side at x = 6 to the face at x = -4, 36 high, less a triangle at 45 degrees at either
        // end. On: the neck's back at x = -9, 3 beyond the shank. The wedge reaches 6 at y = 6 - 0.4142 and 9
        // at y = 9 - 0.4142; the back runs in from y = 41 to 44.
        const double off = 10.0 * 36.0 - 2.0 * 0.5 * 10.0 * 10.0;
        const double on = 3.0 * (44.0 - (6.0 - (std::sqrt(2.0) - 1.0))) - 2.0 * 0.5 * 3.0 * 3.0;
        CHECK(outline.area() == doctest::Approx(straight_area() - off + on).epsilon(1e-12));
        CHECK(outline.box().low.x() == doctest::Approx(-9.0));
        CHECK(outline.box().high.x() == doctest::Approx(6.0));
        CHECK(std::abs(outline.box().low.y()) < 1e-12);
        CHECK(outline.box().high.y() == doctest::Approx(60.0));
    }

    TEST_CASE("relieved V punch: the relief is outside the solid, neck and nose are inside") {
        const ArcOutline outline = make_outline(relieved(Side::right));
        CHECK(nearest(outline, {0.0, 26.0}).distance == doctest::Approx(4.0));    // before the face
        CHECK(nearest(outline, {-6.5, 26.0}).distance == doctest::Approx(-2.5));  // the middle of the neck
        CHECK(nearest(outline, {-11.0, 26.0}).distance == doctest::Approx(2.0));  // behind its back
        CHECK(nearest(outline, {4.0, 14.0}).distance ==
              doctest::Approx(std::sqrt(8.0)));  // over its lower face
        CHECK(nearest(outline, {4.0, 38.0}).distance ==
              doctest::Approx(std::sqrt(8.0)));  // under its upper one
        CHECK(nearest(outline, {0.0, 4.0}).distance < 0.0);
        CHECK(nearest(outline, {0.0, 50.0}).distance == doctest::Approx(-6.0));
        // the straight one is there
        CHECK(nearest(make_outline(VeePunch{90.0 * degree, 1.0, 60.0, 12.0}), {0.0, 26.0}).distance < -5.0);
    }

    TEST_CASE("relieved V punch: on the left it is the mirror image") {
        const ArcOutline right = make_outline(relieved(Side::right));
        const ArcOutline left = make_outline(relieved(Side::left));
        CHECK(left.area() == doctest::Approx(right.area()).epsilon(1e-12));
        for (double x = -12.0; x <= 12.0; x += 0.7) {
            for (double y = -2.0; y <= 62.0; y += 1.3) {
                CAPTURE(x);
                CAPTURE(y);
                CHECK(nearest(left, {x, y}).distance ==
                      doctest::Approx(nearest(right, {-x, y}).distance).epsilon(1e-9));
            }
        }
    }

    TEST_CASE("relieved V punch: short of the axis, flush with the shank, begun within the wedge, rounded") {
        VeePunch punch = relieved(Side::right);
        punch.relief = Relief{Side::right, 8.0, 44.0, -3.0, 4.0, 0.0};  // 3 short of the axis, back flush
        CHECK(make_outline(punch).area() ==
              doctest::Approx(straight_area() - (3.0 * 36.0 - 3.0 * 3.0)).epsilon(1e-12));
        check_sound(make_outline(punch));

        // begun within the wedge, where that is 3.4142 wide to its right: the plane face begins at 3.4142,
        // (3.4142 + 0.4142 + 3) / sqrt 2 from the other flank
        punch.relief->from = 3.0;
        punch.relief->neck = 5.0;
        CHECK(says(refusal([&] { make_outline(punch); }).right, "at most 4.82843 mm"));
        punch.relief->neck = 4.0;
        const ArcOutline low = make_outline(punch);
        check_sound(low);
        CHECK(nearest(low, {3.5, 10.0}).distance == doctest::Approx(0.5));

        punch = relieved(Side::right);
        punch.relief->root_radius = 3.0;
        const ArcOutline rounded = make_outline(punch);
        check_sound(rounded);
        CHECK(arcs_of(rounded, 3.0).size() == 2);
        // each fillet over 45 degrees fills r^2 (tan(pi / 8) - pi / 8)
        const double fillets = 2.0 * 9.0 * (std::tan(22.5 * degree) - 22.5 * degree);
        CHECK(rounded.area() ==
              doctest::Approx(make_outline(relieved(Side::right)).area() + fillets).epsilon(1e-9));
    }

    TEST_CASE("relieved V punch: refusals") {
        check_refused(&Relief::from, 0.2, "relief", "above 0.292893 mm");  // 1 - sin 45
        check_refused(&Relief::from, NAN, "relief", "finite");
        check_refused(&Relief::to, 60.0, "relief", "below the punch's height of 60 mm");
        check_refused(&Relief::to, INFINITY, "relief", "finite");
        check_refused(&Relief::to, 27.9, "relief", "above 28 mm");  // 8 + 10 + 10
        check_refused(&Relief::set_back, -6.0, "relief", "more than -6 mm");
        check_refused(&Relief::set_back, 13.0, "relief", "set it back less");
        check_refused(&Relief::set_back, NAN, "relief", "finite");
        check_refused(&Relief::neck, 0.0, "neck", "more than 0 mm");
        check_refused(&Relief::neck, NAN, "neck", "more than 0 mm");
        // (18 + 0.4142 - 4) / sqrt 2 from the corner at (-4, 18) to the other flank
        check_refused(&Relief::neck, 10.3, "neck", "at most 10.1924 mm");
        check_refused(&Relief::root_radius, -1.0, "root radius", "0 mm or more");
        check_refused(&Relief::root_radius, 50.0, "radius of corner 4 at (-4, 18) mm", "fits");
        VeePunch punch = relieved(Side::right);
        punch.relief->neck = 10.1;
        check_sound(make_outline(punch));
        // an acute one, whose wedge runs out into a shank of 12 mm at 6 / tan 15 - (1 / sin 15 - 1) = 19.5286
        punch = relieved(Side::right);
        punch.angle = 30.0 * degree;
        punch.relief = Relief{Side::right, 3.0, 19.0, 0.0, 0.1, 0.0};
        CHECK(says(refusal([&] { make_outline(punch); }).right, "above 19.5286 mm"));
        punch.relief = Relief{Side::right, 3.0, 40.0, 6.0, 0.1, 0.0};
        CHECK(says(refusal([&] { make_outline(punch); }).what(), "cuts through the wedge"));
        // a neck far thicker than the shank has no height to run back to it
        punch = VeePunch{90.0 * degree, 1.0, 60.0, 4.0};
        punch.relief = Relief{Side::right, 30.0, 40.0, 0.0, 22.0, 0.0};
        CHECK(says(refusal([&] { make_outline(punch); }).right, "end the relief above 41.5858 mm"));
        // a straight punch that cannot be is not made by a relief
        punch = relieved(Side::right);
        punch.nose_radius = 6.1;
        CHECK(refusal([&] { make_outline(punch); }).name == "nose radius");
    }
}
