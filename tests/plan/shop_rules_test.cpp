// Each rule about a bend on both sides of its limit, and the limits against where they are printed.

#include <doctest/doctest.h>

#include <cmath>

#include "sim/material/pure_bending.h"
#include "sim/plan/shop_rules.h"

using namespace overbend;
using namespace overbend::plan;

namespace {

void check_finding(const std::optional<Finding>& f, double figure, double limit) {
    REQUIRE(f);
    CHECK(f->figure == doctest::Approx(figure));
    CHECK(f->limit == doctest::Approx(limit));
    CHECK(f->severity == Severity::caution);
}

}  // namespace

TEST_CASE("least inside radius: the table's own is allowed, less is not") {
    const LeastRadius least{1.6, "row", "source"};
    CHECK_FALSE(too_sharp(1.6, least));
    CHECK_FALSE(too_sharp(1.37, least));  // 15 per cent of it are the tolerance
    check_finding(too_sharp(1.35, least), 1.35, 1.6);
    CHECK(too_sharp(1.35, least)->source == "source");
    CHECK(too_sharp(1.35, least)->detail == "row");
}

// R/T = 50/Z - 1 (Kalpakjian and Schmid, from memory) with e = 1/(2 R/T + 1): e = Z/(100 - Z). Z = 20:
// R = 1.5 t, 25 per cent.
TEST_CASE("outer-fibre strain: against the reduction of area, as engineering strains") {
    material::Card card;
    card.reduction_of_area = 0.2;
    const std::optional<StrainLimit> limit = strain_limit(card, 1.0, 1.0, {});
    REQUIRE(limit);
    CHECK(limit->strain == doctest::Approx(1.0 / (2.0 * 1.5 + 1.0)));
    CHECK_FALSE(overstrained(std::log(1.249), *limit));
    check_finding(overstrained(std::log(1.26), *limit), 26.0, 25.0);
    CHECK(overstrained(std::log(1.499), *limit)->severity == Severity::caution);
    CHECK(overstrained(std::log(1.501), *limit)->severity == Severity::stops);
    card.reduction_of_area = 0.0;
    CHECK_FALSE(strain_limit(card, 1.0, 1.0, {}));  // not known
}

// Of the table's radius less its tolerance; its double stops, what is between is said of the radius.
TEST_CASE("outer-fibre strain: against that of the least radius") {
    material::Card card;
    card.youngs_modulus = 208000.0;
    card.hardening = material::Hollomon{534.1, 0.1586};
    const LeastRadius least{5.0, "row", "source"};
    CHECK(allowed_radius(least) == doctest::Approx(4.25));
    CHECK(allowed_radius({1.0, "", ""}) == doctest::Approx(0.8));
    CHECK(allowed_radius({0.1, "", ""}) == doctest::Approx(0.06));  // half of it is told
    const std::optional<StrainLimit> limit = strain_limit(card, 1.0, 1.0, least);
    REQUIRE(limit);
    CHECK(limit->strain == doctest::Approx(std::exp(outer_strain(card, 1.0, 4.25, 1.0)) - 1.0));
    CHECK_FALSE(overstrained(std::log(1.0 + 1.99 * limit->strain), *limit));
    const std::optional<Finding> f = overstrained(std::log(1.0 + 2.01 * limit->strain), *limit);
    REQUIRE(f);
    CHECK(f->severity == Severity::stops);
}

// With the unstretched layer in the middle the outer fibre is stretched by t / (2 r + t): 1/3 at r = t, 1/5
// at r = 2 t (the formula behind R/T = 50/r% - 1, Kalpakjian and Schmid, from memory). It moves inwards, so
// that ours is a little more; 6 per cent at r = t, 2 at r = 2 t.
TEST_CASE("outer-fibre strain: of the drawing's radius") {
    material::Card card;
    card.youngs_modulus = 208000.0;
    card.hardening = material::Hollomon{534.1, 0.1586};
    for (const double ratio : {1.0, 2.0, 5.0}) {
        CAPTURE(ratio);
        const double middle = 1.0 / (2.0 * ratio + 1.0);
        const double ours = std::exp(outer_strain(card, 1.5, 1.5 * ratio, 1.0)) - 1.0;
        CHECK(ours > middle);
        CHECK(ours < 1.08 * middle);
    }
    CHECK(outer_strain(card, 1.5, 0.0, 1.0) > outer_strain(card, 1.5, 0.5, 1.0));
}

// x >= r + 1.5 s: text of a lecture on design for bending.
TEST_CASE("hole to bend: r + 1.5 s from where the bend begins") {
    CHECK(least_hole_distance(2.0, 1.0) == 3.5);
    CHECK_FALSE(too_near(3.5, 2.0, 1.0));
    check_finding(too_near(3.4, 2.0, 1.0), 3.4, 3.5);
    check_finding(too_near(-0.2, 2.0, 1.0), -0.2, 3.5);
}

// r + 2 s up to 25 mm of side along the bend, r + 2.5 s up to 50, r + 3 s beyond: common practice, from
// memory.
TEST_CASE("hole to bend: a slot along the bend keeps further away, the longer it is") {
    CHECK(least_hole_distance(2.0, 1.0, 0.0) == 3.5);
    CHECK(least_hole_distance(2.0, 1.0, 0.1) == 4.0);
    CHECK(least_hole_distance(2.0, 1.0, 25.0) == 4.0);
    CHECK(least_hole_distance(2.0, 1.0, 25.1) == 4.5);
    CHECK(least_hole_distance(2.0, 1.0, 50.0) == 4.5);
    CHECK(least_hole_distance(2.0, 1.0, 50.1) == 5.0);
    CHECK_FALSE(too_near(4.0, 2.0, 1.0, 10.0));
    check_finding(too_near(3.9, 2.0, 1.0, 10.0), 3.9, 4.0);
    CHECK_FALSE(too_near(3.9, 2.0, 1.0));
    CHECK(too_near(3.9, 2.0, 1.0, 10.0)->further == std::vector<double>{2.0});
    CHECK(too_near(3.4, 2.0, 1.0)->further == std::vector<double>{1.5});
}

// One thickness: common practice, no source.
TEST_CASE("web to the edge: one thickness") {
    CHECK_FALSE(thin_web(1.5, BlankEdge::along, 1.5));
    check_finding(thin_web(1.49, BlankEdge::along, 1.5), 1.49, 1.5);
    CHECK(thin_web(1.49, BlankEdge::along, 1.5)->further == std::vector<double>{0.0});
    CHECK(thin_web(0.2, BlankEdge::end, 1.5)->further == std::vector<double>{1.0});
    CHECK(thin_web(-0.1, BlankEdge::end, 1.5)->severity == Severity::stops);  // beyond the blank
}

// One thickness, half of it by laser: common practice, no source.
TEST_CASE("least hole: one thickness, and half of it by laser") {
    CHECK_FALSE(small_hole(2.0, 2.0));
    REQUIRE(small_hole(1.9, 2.0));
    CHECK(small_hole(1.9, 2.0)->severity == Severity::note);
    CHECK(small_hole(1.0, 2.0)->severity == Severity::note);
    check_finding(small_hole(0.99, 2.0), 0.99, 2.0);
}

// V = 6 t to 2.5 mm, 8 t from 3 to 8, 10 t from 9 to 10, 12 t beyond: common practice, no standard.
TEST_CASE("die opening: the usual one, and the band around it") {
    CHECK(usual_opening(1.0) == 6.0);
    CHECK(usual_opening(2.5) == 15.0);
    CHECK(usual_opening(3.0) == 24.0);
    CHECK(usual_opening(8.0) == 64.0);
    CHECK(usual_opening(9.0) == 90.0);
    CHECK(usual_opening(10.0) == 100.0);
    CHECK(usual_opening(12.5) == 150.0);
    CHECK_FALSE(odd_opening(4.0, 1.0));
    CHECK_FALSE(odd_opening(12.0, 1.0));
    check_finding(odd_opening(3.9, 1.0), 3.9, 4.0);
    check_finding(odd_opening(12.1, 1.0), 12.1, 12.0);
}

// 0.7 V: common practice, from memory.
TEST_CASE("least flange: 0.7 of the opening") {
    CHECK_FALSE(short_flange(7.0, 10.0));
    check_finding(short_flange(6.9, 10.0), 6.9, 7.0);
}
