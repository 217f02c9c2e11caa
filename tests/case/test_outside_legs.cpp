// Legs measured on the outside, turned into flats.
//
// Source  DIN 6935 as in Tabellenbuch Metall, page on cut lengths of bent parts: legs a and b to the outer
//         tangents (opening angle to 90 degrees) or to the outer corner (above), L = a + b - v. Its worked
//         example: opening angle 60, a = 16, b = 21, r = 6, s = 5: v = 5.77 with k = 0.7 read off a
//         diagram, L = 31.23, printed rounded up. With k = 0.6896 by the formula: v = 5.823, L = 31.177.

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <string>

#include "sim/plan/bend_allowance.h"
#include "tests/case/case_mistakes.h"
#include "tests/case/whole_cases.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

// One bend in an open die; the paths and thickness are what the checks are about.
std::string one_bend(const std::string& path, double thickness) {
    return "format = 1\ntitle = \"Angle\"\n[strip]\nmaterial = \"dc01\"\nthickness_mm = " +
           std::to_string(thickness) + "\nwidth_mm = 20\n[part]\npath = [" + path +
           "]\n[[tool]]\nname = \"punch\"\nkind = \"vee-punch\"\nangle_deg = 30\nnose_radius_mm = 1\n"
           "[[tool]]\nname = \"die\"\nkind = \"open-die\"\nopening_mm = 60\nshoulder_radius_mm = 1\n"
           "[[step]]\nname = \"one\"\nbends = [\"bend 1\"]\npunch = \"punch\"\ndie = \"die\"\n";
}

std::string figure(double value) {
    char text[40];
    std::snprintf(text, sizeof text, "%.15g", value);
    return text;
}

double din_length(const files::Case& c) {
    double length = 0.0;
    for (const double flat : c.part.flats) length += flat;
    for (const files::Bend& b : c.part.bends)
        length += plan::din_allowance(b.inside_radius, c.thickness, std::abs(b.angle));
    return length;
}

}  // namespace

TEST_CASE("outside legs: the standard's worked example") {
    const files::Case c = case_of(
        one_bend("{ outside_mm = 16 }, { bend_deg = 120, inside_radius_mm = 6 }, { outside_mm = 21 }", 5.0));
    CHECK(c.part.flats[0] == doctest::Approx(5.0));
    CHECK(c.part.flats[1] == doctest::Approx(10.0));
    CHECK(std::abs(din_length(c) - 31.177) < 5e-4);
    CHECK(std::abs(din_length(c) - 31.23) < 0.06);
}

// By hand: 40 degrees, r + s = 3: (r + s) tan 20 = 1.0919.
TEST_CASE("outside legs: to the outer corner below 90 degrees, to the tangent from there on") {
    const auto flat = [](const std::string& angle) {
        return case_of(one_bend("{ outside_mm = 20 }, { bend_deg = " + angle +
                                    ", inside_radius_mm = 2 }, { flat_mm = 7 }",
                                1.0))
            .part.flats;
    };
    CHECK(flat("40")[0] == doctest::Approx(20.0 - 1.0919).epsilon(1e-5));
    CHECK(flat("90")[0] == doctest::Approx(17.0));
    CHECK(flat("150")[0] == doctest::Approx(17.0));
    CHECK(flat("150")[1] == 7.0);  // mixed: a flat stays what it is
}

TEST_CASE("outside legs: every flat of a case, and back") {
    const files::Case before = case_of(whole_case);
    std::string text = whole_case;
    for (std::size_t i = 0; i < before.part.flats.size(); ++i) {
        double leg = before.part.flats[i];
        for (const std::size_t b : {i - 1, i}) {  // no bend before the first flat, nor after the last
            if (b >= before.part.bends.size()) continue;
            const files::Bend& bend = before.part.bends[b];
            leg += plan::outer_corner(bend.inside_radius, before.thickness, std::abs(bend.angle));
        }
        text = replaced(text, "flat_mm = " + figure(before.part.flats[i]) + "\n",
                        "outside_mm = " + figure(leg) + "\n");
    }
    CHECK(text.find("flat_mm") == std::string::npos);
    const files::Case after = case_of(text);
    for (std::size_t i = 0; i < before.part.flats.size(); ++i)
        CHECK(after.part.flats[i] == doctest::Approx(before.part.flats[i]).epsilon(1e-12));
}

TEST_CASE("outside legs: a hem's is measured to its crown") {
    CHECK(case_of(pressed_case).part.flats[0] == doctest::Approx(9.0));  // 10.1 less r + s = 1.1
}

TEST_CASE("outside legs: one that is too short for its bends says what they take") {
    const auto mistake = [](const std::string& path) { return mistake_in(one_bend(path, 1.0), as_case); };
    const auto brief =
        mistake("{ outside_mm = 3 }, { bend_deg = 90, inside_radius_mm = 2 }, { flat_mm = 7 }");
    REQUIRE(brief);
    CHECK(brief->key == "part.path[1].outside_mm");
    CHECK(brief->wrong.find("too short") != std::string::npos);
    CHECK(brief->right.find("more than 3 mm") != std::string::npos);
    const auto twice = mistake(
        "{ outside_mm = 30, flat_mm = 27 }, { bend_deg = 90, inside_radius_mm = 2 }, { flat_mm = 7 }");
    REQUIRE(twice);
    CHECK(twice->key == "part.path[1]");
    CHECK(twice->wrong.find("two lengths") != std::string::npos);
    const auto misplaced = mistake("{ flat_mm = 30 }, { outside_mm = 20 }, { flat_mm = 7 }");
    REQUIRE(misplaced);
    CHECK(misplaced->key == "part.path[2].outside_mm");
}
