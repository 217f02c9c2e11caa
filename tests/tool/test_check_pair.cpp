// Which punches and dies can work together. The tools are invented.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "sim/tool/die.h"
#include "sim/tool/punch.h"
#include "sim/tool/signed_distance.h"
#include "sim/units.h"
#include "tests/tool/outline_checks.h"

using namespace overbend::tool;
using namespace overbend::tests;
using overbend::degree;

namespace {

VeePunch vee_punch() {
    return {60.0 * degree, 1.0, 30.0, 12.0};
}
VeeFace vee_face() {
    return {86.0 * degree, 8.0, 1.0, 0.0};
}
OffsetDie offset_die() {
    return {4.0, 60.0 * degree, 1.0, 0.8, 6.0, 10.0};
}
OffsetPunch offset_punch() {
    return {4.0, 60.0 * degree, 0.3, 0.4, 1.2, 6.0, 10.0};
}
ChannelPunch channel_punch() {
    return {17.0, 1.0, 0.0, 8.0, 5.0, Shank::middle, 30.0};
}
ChannelDie channel_die() {
    return {20.0, 2.0, 12.0, 0.0, 40.0, 20.0};
}

template <typename Upper, typename Lower>
std::string refused(const Upper& upper, const Lower& lower, double thickness) {
    return refusal([&] { check_pair(upper, lower, thickness); }).what();
}

}  // namespace

TEST_SUITE("tool") {
    TEST_CASE("V pair: what works, and the wedge wider than the groove") {
        check_pair(vee_punch(), vee_face(), 1.0);
        VeePunch punch = vee_punch();
        punch.angle = vee_face().angle;
        check_pair(punch, vee_face(), 1.0);
        punch.angle += 0.1 * degree;
        CHECK(says(refused(punch, vee_face(), 1.0), "use a punch of at most 86 deg"));
    }

    TEST_CASE("V pair: the nose with the strip round it goes in between the shoulders") {
        VeeFace face = vee_face();
        face.angle = 62.0 * degree;
        VeePunch punch = vee_punch();
        punch.nose_radius = 3.0;
        check_pair(punch, face, 1.0);
        punch.nose_radius = 3.1;
        CHECK(says(refused(punch, face, 1.0),
                   "nose radius: 3.1 mm with a strip of 1 mm round it is 8.2 mm wide"));
        CHECK(says(refused(punch, face, 1.0), "use a nose of at most 3 mm"));
        CHECK(says(refused(vee_punch(), face, 4.5), "an opening of more than 9 mm"));
        // in a groove of 86 deg the strip lies on the flanks first up to a radius of 4 / cos 43 deg - 1
        // = 4.469
        check_pair(punch, vee_face(), 1.0);
        punch.nose_radius = 3.5;
        CHECK(says(refused(punch, vee_face(), 1.0), "use a nose of at most 3.46931 mm"));
        // and in one of 150 deg up to 4 / cos 75 deg - 1 = 14.455
        VeeFace flat = vee_face();
        flat.angle = 150.0 * degree;
        check_pair(punch, flat, 1.0);
        punch.nose_radius = 14.0;  // (14 + 1 + 1) cos 75 deg = 4.14 > 4
        CHECK(says(refused(punch, flat, 1.0), "nose radius"));
        punch.nose_radius = 13.4;
        check_pair(punch, flat, 1.0);
    }

    TEST_CASE("V pair: a nose rounder than the groove's bottom is no reason to refuse") {
        VeeFace face = vee_face();
        face.bottom_radius = 0.2;
        check_pair(vee_punch(), face, 1.0);
        face.bottom_radius = 4.0;
        check_pair(vee_punch(), face, 1.0);
    }

    TEST_CASE("V pair: a strip has a thickness") {
        for (const double thickness : {0.0, -1.0, double(NAN)}) {
            CHECK(says(refused(vee_punch(), vee_face(), thickness), "thickness"));
            CHECK(says(refused(offset_punch(), offset_die(), thickness), "thickness"));
            CHECK(says(refused(channel_punch(), channel_die(), thickness), "thickness"));
        }
    }

    // The strip's outer surface about the nose is a circle of radius nose + thickness; lowered until it meets
    // the groove, it does so on the flanks or on the shoulders. The referee lowers it on the outline.
    TEST_CASE("V pair: the largest bend angle is where the strip round the nose meets the groove") {
        for (const double angle : {40.0, 62.0, 86.0, 120.0, 150.0}) {
            for (const double nose : {0.5, 1.0, 2.0, 3.5, 6.0}) {
                CAPTURE(angle);
                CAPTURE(nose);
                VeePunch punch = vee_punch();
                punch.nose_radius = nose;
                VeeFace face = vee_face();
                face.angle = angle * degree;
                const ArcOutline outline = make_outline(VeeDie{{face}, 30.0, 30.0}, 1);
                double high = 20.0;
                double low = -groove_depth(face);
                for (int i = 0; i < 60; ++i) {
                    const double middle = 0.5 * (high + low);
                    (nearest(outline, {0, middle}).distance > nose + 1.0 ? high : low) = middle;
                }
                const Vec2 normal = nearest(outline, {0, high}).normal;
                const double lean = std::atan2(std::abs(normal.x()), normal.y());
                CHECK(largest_bend_angle(punch, face, 1.0) == doctest::Approx(2.0 * lean).epsilon(1e-6));
            }
        }
    }

    TEST_CASE("offset pair: the halves must match") {
        check_pair(offset_punch(), offset_die(), 1.2);
        check_pair(offset_punch(), offset_die(), 1.0);
        OffsetPunch punch = offset_punch();
        punch.angle += 0.009 * degree;
        check_pair(punch, offset_die(), 1.0);
        punch.angle += 0.002 * degree;
        CHECK(says(refused(punch, offset_die(), 1.0), "does not match the die's 60 deg"));
        punch = offset_punch();
        punch.offset = 4.0 + 5e-7;
        check_pair(punch, offset_die(), 1.0);
        punch.offset = 4.1;
        CHECK(says(refused(punch, offset_die(), 1.0), "the punch's 4.1 mm does not match the die's 4 mm"));
        CHECK(says(refused(offset_punch(), offset_die(), 1.3), "give at least 1.3 mm"));
    }

    // Referee: the least distance between the closed halves, measured on their outlines.
    TEST_CASE("offset pair: corners leave the strip its thickness") {
        for (const double root : {0.2, 1.0, 1.4, 1.6, 1.8, 2.2, 2.6, 2.7, 2.9, 3.2}) {
            for (const bool at_die : {true, false}) {
                CAPTURE(root);
                CAPTURE(at_die);
                OffsetDie die = offset_die();
                OffsetPunch punch = offset_punch();
                punch.offset = die.offset = 6.0;
                (at_die ? die.root_radius : punch.root_radius) = root;
                const ArcOutline below = make_outline(die);
                const ArcOutline above = shifted(make_outline(punch), {0, -punch.offset + punch.clearance});
                double least = 1e300;
                for (const Vec2& point : sample(above, 1e-6)) {
                    least = std::min(least, nearest(below, point).distance);
                }
                for (const Vec2& point : sample(below, 1e-6)) {
                    least = std::min(least, nearest(above, point).distance);
                }
                check_pair(punch, die, std::min(least, 1.2) - 1e-5);
                const double more = std::min(least, 1.2) + 1e-5;
                CHECK(says(refused(punch, die, more), least < 1.2 - 1e-5 ? "pinches" : "give at least"));
            }
        }
        OffsetDie die = offset_die();
        die.root_radius = 1.6;
        CHECK(says(refused(offset_punch(), die, 1.2), "root radius of the die"));
        CHECK(says(refused(offset_punch(), die, 1.2), "at most 1.5 mm fits"));
    }

    TEST_CASE("channel pair: a thickness on either side of the foot") {
        check_pair(channel_punch(), channel_die(), 1.5);
        CHECK(says(refused(channel_punch(), channel_die(), 1.6), "leaves 1.5 mm on either side"));
        CHECK(says(refused(channel_punch(), channel_die(), 1.6), "a foot of at most 16.8 mm"));
        CHECK(says(refused(channel_punch(), channel_die(), 10.0), "an opening of more than 20 mm"));
    }
}
