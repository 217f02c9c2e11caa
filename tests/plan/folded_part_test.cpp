// The half-formed strip by rule: against walks and sums done here.

#include "sim/plan/folded_part.h"

#include <doctest/doctest.h>

#include <cmath>

#include "sim/units.h"

using namespace overbend;
using namespace overbend::plan;

namespace {

constexpr double right_angle = 0.5 * pi;

FoldedPart three_bends() {
    FoldedPart part;
    part.thickness = 1.0;
    part.flats = {10.0, 20.0, 30.0, 40.0};
    part.angle = {right_angle, right_angle, -0.5 * right_angle};
    part.radius = {2.0, 2.5, 3.0};
    part.allowance = {3.0, 3.8, 2.3};
    return part;
}

double area(const std::vector<clearance::Convex>& pieces) {
    double sum = 0.0;
    for (const clearance::Convex& piece : pieces)
        for (std::size_t i = 0; i < piece.corners.size(); ++i) {
            const Eigen::Vector2d a = piece.corners[i], b = piece.corners[(i + 1) % piece.corners.size()];
            sum += 0.5 * (a.x() * b.y() - a.y() * b.x());
        }
    return sum;
}

}  // namespace

TEST_CASE("a flat strip goes straight on over its allowances") {
    const Side right = right_of(three_bends(), 0);
    REQUIRE(right.groups() == 3);
    const Frame last = frame_of(right, 2, 0);
    CHECK(last.at.x() == doctest::Approx(20.0 + 3.8 + 30.0));
    CHECK(last.at.y() == doctest::Approx(0.0));
    CHECK(straight_length(right, 0) == doctest::Approx(20.0 + 3.8 + 30.0 + 2.3 + 40.0));
    CHECK(straight_length(right, 2) == doctest::Approx(20.0 + 3.8 + 30.0));
}

TEST_CASE("a made bend turns what follows up, and takes its radius' room") {
    const Side right = right_of(three_bends(), 0);
    // after the bend of 90 degrees: up by its radius, along by it; the piece's frame begins before the bend
    const Frame past = frame_of(right, 2, 1);
    CHECK(past.at.x() == doctest::Approx(20.0 + 2.5));
    CHECK(past.at.y() == doctest::Approx(2.5 + 30.0));
    CHECK(past.turn() == doctest::Approx(right_angle));
}

TEST_CASE("seen from the left the same bends turn up as well") {
    const FoldedPart part = three_bends();
    const Side left = left_of(part, 2);
    REQUIRE(left.flats == std::vector<double>{30.0, 20.0, 10.0});
    REQUIRE(left.angle == std::vector<double>{right_angle, right_angle});
    CHECK(bits_left_of(0b011, 2) == 0b11);
    CHECK(bits_left_of(0b001, 2) == 0b10);  // the nearest comes first
    CHECK(bits_right_of(0b110, 0) == 0b11);
}

TEST_CASE("laid the other end first the bends are counted from the other end; face down they turn down") {
    const FoldedPart part = three_bends();
    const FoldedPart turned = as_laid(part, false, true), over = as_laid(part, true, false);
    CHECK(turned.angle.front() == part.angle.back());
    CHECK(turned.flats.front() == 40.0);
    CHECK(over.angle.front() == -part.angle.front());
    CHECK(as_laid(BendSet{0b001}, 3, true) == 0b100);
    CHECK(as_laid(BendSet{0b001}, 3, false) == 0b001);
}

TEST_CASE("the pieces are as large as the strip, whatever is made") {
    const Side right = right_of(three_bends(), 0);
    for (BendSet made = 0; made < 4; ++made)
        for (int group = 0; group < 3; ++group) {
            CAPTURE(made);
            CAPTURE(group);
            double length = right.flats[group];
            if (group > 0) {
                const int bend = group - 1;
                length += (made >> bend) & 1 ? std::abs(right.angle[bend]) * right.radius[bend]
                                             : right.allowance[bend];
            }
            // arcs are covered on their outer side, by 2 per cent of the radius at most
            CHECK(area(pieces_of(right, group, made, 0.0)) == doctest::Approx(length).epsilon(0.05));
            CHECK(area(pieces_of(right, group, made, 0.0)) > 0.98 * length);
        }
}

TEST_CASE("what the tools press is left out as long as it is straight") {
    const Side right = right_of(three_bends(), 0);
    CHECK(area(pieces_of(right, 0, 0, 8.0)) == doctest::Approx(12.0));
    CHECK(pieces_of(right, 0, 0, 25.0).empty());
    CHECK(area(pieces_of(right, 1, 0, 25.0)) == doctest::Approx(20.0 + 3.8 + 30.0 - 25.0));
    // once the bend is made, all beyond it counts
    CHECK(area(pieces_of(right, 1, 1, 25.0)) > 30.0);
}
