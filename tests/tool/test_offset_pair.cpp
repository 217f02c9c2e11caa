// Offset punches and dies: alone, and closed on each other. The tools are invented.

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

OffsetDie die(double angle = 60.0) {
    return {4.0, angle * degree, 1.0, 0.8, 6.0, 10.0};
}
OffsetPunch punch(double angle = 60.0) {
    return {4.0, angle * degree, 0.3, 0.4, 1.2, 6.0, 10.0};
}

template <typename Tool>
std::string with(Tool tool, double Tool::*member, double value) {
    tool.*member = value;
    return refusal([&] { make_outline(tool); }).what();
}

// The punch lowered until it is closed on the die.
ArcOutline closed(const OffsetPunch& upper) {
    return shifted(make_outline(upper), {0, -upper.offset + upper.clearance});
}

// The pieces of the working face of a tool with its corners rounded: from the first convex corner arc to the
// concave one, both lands and the sloped face between.
std::vector<Piece> working_lines(const ArcOutline& outline, double convex_radius) {
    const std::vector<Piece>& pieces = outline.pieces();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i].sweep <= 0.0 || std::abs(pieces[i].radius - convex_radius) > 1e-9) continue;
        const auto at = [&](std::size_t step) { return pieces[(i + pieces.size() + step) % pieces.size()]; };
        // land, convex arc, slope, concave arc, land, in this or in the other order
        const bool forward = at(2).sweep < 0.0;
        return forward ? std::vector<Piece>{at(pieces.size() - 1), at(1), at(3)}
                       : std::vector<Piece>{at(pieces.size() - 3), at(pieces.size() - 1), at(1)};
    }
    return {};
}

}  // namespace

TEST_SUITE("tool") {
    TEST_CASE("offset die: lands, slope and corners as given") {
        for (const double angle : {20.0, 60.0, 90.0}) {
            CAPTURE(angle);
            const ArcOutline outline = make_outline(die(angle));
            check_sound(outline);
            const double half_run = 2.0 / std::tan(angle * degree);
            CHECK(nearest(outline, {half_run + 5, 1}).distance == doctest::Approx(1.0));
            CHECK(nearest(outline, {-half_run - 5, -3.5}).distance == doctest::Approx(0.5));
            const Nearest slope = nearest(outline, {0, -2});  // its middle
            CHECK(std::abs(slope.distance) < 1e-12);
            CHECK(slope.normal.x() == doctest::Approx(-std::sin(angle * degree)));
            CHECK(arcs_of(outline, 1.0).at(0).sweep == doctest::Approx(angle * degree));
            CHECK(arcs_of(outline, 0.8).at(0).sweep == doctest::Approx(-angle * degree));
            CHECK(outline.box().high.x() == doctest::Approx(half_run + 6.0));
            CHECK(outline.box().low.x() == doctest::Approx(-half_run - 6.0));
            CHECK(outline.box().low.y() == doctest::Approx(-14.0));
            CHECK(std::abs(outline.box().high.y()) < 1e-12);
        }
    }

    TEST_CASE("offset punch: lands, slope and corners as given") {
        for (const double angle : {20.0, 60.0, 90.0}) {
            CAPTURE(angle);
            const ArcOutline outline = make_outline(punch(angle));
            check_sound(outline);
            CHECK(std::abs(outline.box().low.y()) < 1e-12);
            CHECK(outline.box().high.y() == doctest::Approx(14.0));
            CHECK(arcs_of(outline, 0.3).at(0).sweep == doctest::Approx(angle * degree));
            CHECK(arcs_of(outline, 0.4).at(0).sweep == doctest::Approx(-angle * degree));
            CHECK(nearest(outline, {outline.box().low.x() + 2, -1}).distance == doctest::Approx(1.0));
            const Nearest high = nearest(outline, {outline.box().high.x() - 2, 3.5});
            CHECK(high.distance == doctest::Approx(0.5));
            CHECK(high.normal.y() == doctest::Approx(-1.0));
        }
    }

    TEST_CASE("closed, the pair is the clearance apart along the slope and the lands") {
        for (const double angle : {20.0, 45.0, 60.0, 90.0}) {
            CAPTURE(angle);
            const OffsetPunch upper = punch(angle);
            const ArcOutline lower = make_outline(die(angle));
            const std::vector<Piece> lines = working_lines(closed(upper), upper.nose_radius);
            REQUIRE(lines.size() == 3);
            int sampled = 0;
            for (const Piece& line : lines) {
                REQUIRE_FALSE(line.is_arc());
                for (int i = 0; i <= 20; ++i) {
                    const Nearest found = nearest(lower, line.start + (line.end - line.start) * (i / 20.0));
                    // beside the die's arcs the gap is that of the corner
                    if (found.curvature != 0.0) continue;
                    ++sampled;
                    CHECK(found.distance == doctest::Approx(upper.clearance));
                }
            }
            CHECK(sampled > 30);
        }
    }

    TEST_CASE("closed, nested corner arcs are the clearance apart all round") {
        OffsetPunch upper = punch();
        OffsetDie lower = die();
        upper.nose_radius = 0.3;
        lower.root_radius = 1.5;
        upper.root_radius = 1.8;
        lower.shoulder_radius = 0.6;
        check_pair(upper, lower, 1.2);
        const ArcOutline below = make_outline(lower);
        const ArcOutline above = closed(upper);
        for (const Vec2& point : sample(above, 1e-4)) {
            const double distance = nearest(below, point).distance;
            if (point.y() > 1.3 || std::abs(point.x()) > 5.0) continue;  // the punch's body and ends
            CHECK(distance == doctest::Approx(1.2).epsilon(1e-6));
        }
    }

    TEST_CASE("offset tools: refusals") {
        CHECK(says(with(die(), &OffsetDie::angle, 91.0 * degree), "at most 90 deg"));
        CHECK(says(with(punch(), &OffsetPunch::angle, 0.0), "at most 90 deg"));
        CHECK(says(with(die(), &OffsetDie::angle, NAN), "at most 90 deg"));
        CHECK(says(with(die(), &OffsetDie::shoulder_radius, -0.1), "shoulder radius"));
        CHECK(says(with(die(), &OffsetDie::root_radius, -0.1), "root radius"));
        CHECK(says(with(punch(), &OffsetPunch::nose_radius, -0.1), "nose radius"));
        CHECK(says(with(punch(), &OffsetPunch::root_radius, NAN), "root radius"));
        // (1.0 + 0.8) tan 30 = 1.039 needs a slope of that; an offset of 0.8 has one 0.924 long
        CHECK(says(with(die(), &OffsetDie::offset, 0.8),
                   "shoulder radius: 1 mm and the root radius of 0.8 mm"));
        CHECK(says(with(die(), &OffsetDie::offset, 0.8), "at most 1.6 mm fits"));
        CHECK(says(with(die(), &OffsetDie::land, 0.5), "give more than 0.57735 mm"));
        CHECK(says(with(punch(), &OffsetPunch::land, 0.2), "give more than 0.23094 mm"));
        for (double OffsetDie::*member : {&OffsetDie::offset, &OffsetDie::land, &OffsetDie::height}) {
            CHECK(says(with(die(), member, 0.0), "more than 0 mm"));
        }
        for (double OffsetPunch::*member :
             {&OffsetPunch::offset, &OffsetPunch::clearance, &OffsetPunch::land, &OffsetPunch::height}) {
            CHECK(says(with(punch(), member, 0.0), "more than 0 mm"));
        }
    }

    TEST_CASE("offset tools: sharp corners are allowed") {
        OffsetDie lower = die(90.0);
        lower.shoulder_radius = lower.root_radius = 0.0;
        check_sound(make_outline(lower));
        OffsetPunch upper = punch(90.0);
        upper.nose_radius = upper.root_radius = 0.0;
        check_sound(make_outline(upper));
    }
}
