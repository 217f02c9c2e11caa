// Punches: key dimensions measured on the finished outline, and refusals. The tools are invented.

#include "sim/tool/punch.h"

#include <doctest/doctest.h>

#include <cmath>

#include "sim/tool/signed_distance.h"
#include "sim/units.h"
#include "tests/tool/outline_checks.h"

using namespace overbend::tool;
using namespace overbend::tests;
using overbend::degree;

namespace {

VeePunch vee() {
    return {60.0 * degree, 1.0, 30.0, 12.0};
}

ChannelPunch channel(Shank shank) {
    return {17.0, 1.0, 5.0 * degree, 8.0, 5.0, shank, 30.0};
}

template <typename Tool>
overbend::OutOfRange refused(const Tool& tool) {
    return refusal([&] { make_outline(tool); });
}

// The x of the outline's left and right side at a height well away from corners.
std::pair<double, double> sides_at(const ArcOutline& outline, double y) {
    const double middle = 0.5 * (outline.box().low.x() + outline.box().high.x());
    const double far = 1.0 + outline.box().high.x() - middle;
    std::pair<double, double> sides;
    for (const double sense : {-1.0, 1.0}) {
        // walk in from outside by the distance until the outline is met
        Vec2 point(middle + sense * far, y);
        for (int i = 0; i < 2000; ++i) point.x() -= sense * nearest(outline, point).distance;
        (sense < 0.0 ? sides.first : sides.second) = point.x();
    }
    return sides;
}

}  // namespace

TEST_SUITE("tool") {
    TEST_CASE("V punch: nose at the origin, flanks at half the angle, shank as wide as given") {
        for (const double angle : {20.0, 60.0, 90.0, 150.0}) {
            CAPTURE(angle);
            VeePunch punch = vee();
            punch.angle = angle * degree;
            const ArcOutline outline = make_outline(punch);
            check_sound(outline);
            CHECK(std::abs(outline.box().low.y()) < 1e-12);
            CHECK(outline.box().high.y() == doctest::Approx(30.0));
            CHECK(outline.box().low.x() == doctest::Approx(-6.0));
            CHECK(outline.box().high.x() == doctest::Approx(6.0));

            const Nearest under = nearest(outline, {0, -0.5});
            CHECK(under.distance == doctest::Approx(0.5));
            CHECK(under.foot.norm() < 1e-12);
            const Piece nose = arcs_of(outline, 1.0).at(0);
            CHECK((nose.centre - Vec2(0, 1)).norm() < 1e-12);
            CHECK(nose.sweep == doctest::Approx((180.0 - angle) * degree));
            for (const Piece& piece : outline.pieces()) {
                const double lean = std::abs(std::atan(piece.direction.x() / piece.direction.y()));
                const bool flank = !piece.is_arc() && lean > 1e-6 && lean < 89.9 * degree;
                if (flank) CHECK(lean == doctest::Approx(0.5 * angle * degree));
            }
        }
    }

    TEST_CASE("V punch: a nose as wide as the shank is the largest") {
        VeePunch punch = vee();
        punch.nose_radius = 6.0;
        check_sound(make_outline(punch));
        punch.nose_radius = 6.1;
        CHECK(says(refused(punch).what(),
                   "nose radius: 6.1 mm does not fit under a shank 12 mm wide; at most 6 mm"));
    }

    TEST_CASE("V punch: refusals") {
        VeePunch punch = vee();
        punch.height = 9.3;  // the wedge is 6 / tan 30 deg - 1 = 9.39 high
        CHECK(says(refused(punch).what(), "punch height"));
        CHECK(says(refused(punch).what(), "9.3923 mm"));
        punch.height = 9.4;
        check_sound(make_outline(punch));
        for (const double angle : {0.0, 180.0, -60.0, 1e9, double(NAN)}) {
            punch = vee();
            punch.angle = angle * degree;
            CHECK(says(refused(punch).what(), "punch angle"));
        }
        for (double VeePunch::*member : {&VeePunch::nose_radius, &VeePunch::height, &VeePunch::shank_width}) {
            for (const double value : {0.0, -1.0, double(NAN), double(INFINITY)}) {
                punch = vee();
                punch.*member = value;
                CHECK(says(refused(punch).right, "more than 0 mm"));
            }
        }
    }

    TEST_CASE("channel punch: foot and shank as wide as given, the face at y = 0") {
        for (const Shank shank : {Shank::middle, Shank::left, Shank::right}) {
            for (const double relief : {0.0, 5.0, 20.0}) {
                CAPTURE(relief);
                CAPTURE(static_cast<int>(shank));
                ChannelPunch punch = channel(shank);
                punch.side_relief = relief * degree;
                const ArcOutline outline = make_outline(punch);
                check_sound(outline);
                CHECK(std::abs(outline.box().low.y()) < 1e-12);
                CHECK(outline.box().high.y() == doctest::Approx(30.0));
                CHECK(outline.box().high.x() == doctest::Approx(8.5));
                CHECK(outline.box().low.x() == doctest::Approx(-8.5));
                CHECK(arcs_of(outline, 1.0).size() == 2);
                CHECK(nearest(outline, {0, -1}).distance == doctest::Approx(1.0));

                const auto [left, right] = sides_at(outline, 20.0);
                CHECK(right - left == doctest::Approx(5.0));
                const auto foot = sides_at(outline, 5.0);
                CHECK(foot.first == doctest::Approx(-foot.second));
                const double lean = sides_at(outline, 4.0).second - foot.second;
                CHECK(lean == doctest::Approx(std::tan(relief * degree)));
                const double top = foot.second - 3.0 * std::tan(relief * degree);  // at the foot's top, y = 8
                if (shank == Shank::middle) CHECK(left == doctest::Approx(-2.5));
                if (shank == Shank::left) CHECK(left == doctest::Approx(-top));
                if (shank == Shank::right) CHECK(right == doctest::Approx(top));
            }
        }
    }

    TEST_CASE("channel punch: an L-shaped one leaves the other side free") {
        const ArcOutline right = make_outline(channel(Shank::right));
        CHECK(nearest(right, {-5, 12}).distance > 3.0);
        CHECK(nearest(right, {5, 12}).distance < 0.0);
        const ArcOutline left = make_outline(channel(Shank::left));
        CHECK(nearest(left, {5, 12}).distance > 3.0);
        CHECK(nearest(left, {-5, 12}).distance < 0.0);
    }

    TEST_CASE("channel punch: sharp corners, full corners, a shank as wide as the foot") {
        ChannelPunch punch = channel(Shank::middle);
        punch.corner_radius = 0.0;
        check_sound(make_outline(punch));
        punch = channel(Shank::middle);
        punch.corner_radius = 8.5;
        punch.foot_height = 12.0;
        check_sound(make_outline(punch));
        for (const Shank shank : {Shank::middle, Shank::left, Shank::right}) {
            punch = channel(shank);
            punch.side_relief = 0.0;
            punch.shank_width = punch.width;
            const ArcOutline outline = make_outline(punch);
            check_sound(outline);
            const auto sides = sides_at(outline, 20.0);
            CHECK(sides.second == doctest::Approx(8.5));
            CHECK(sides.first == doctest::Approx(-8.5));
        }
    }

    TEST_CASE("channel punch: refusals") {
        const auto with = [](double ChannelPunch::*member, double value) {
            ChannelPunch punch = channel(Shank::middle);
            punch.*member = value;
            return std::string(refused(punch).what());
        };
        CHECK(says(with(&ChannelPunch::corner_radius, 8.6), "at most 8.5 mm fits"));
        CHECK(says(with(&ChannelPunch::corner_radius, -0.1), "0 mm or more"));
        CHECK(says(with(&ChannelPunch::side_relief, 30.0 * degree), "less than 30 deg"));
        CHECK(says(with(&ChannelPunch::side_relief, -1.0 * degree), "less than 30 deg"));
        CHECK(says(with(&ChannelPunch::foot_height, 1.05), "give more than 1.08716 mm"));
        CHECK(says(with(&ChannelPunch::foot_height, 100.0), "less relief or a lower foot"));
        CHECK(says(with(&ChannelPunch::height, 8.0), "more than the foot's height of 8 mm"));
        // the foot's top: 17 + 2 (1 (1 + sin 5) / cos 5 - 1) - 2 8 tan 5 = 15.7828
        CHECK(says(with(&ChannelPunch::shank_width, 16.0), "at most 15.7828 mm fits"));
        for (double ChannelPunch::*member : {&ChannelPunch::width, &ChannelPunch::foot_height,
                                             &ChannelPunch::shank_width, &ChannelPunch::height}) {
            CHECK(says(with(member, 0.0), "more than 0 mm"));
            CHECK(says(with(member, NAN), "more than 0 mm"));
        }
    }
}
