// The rules for developed lengths against the worked examples of the books they come from.
//
// Sources, with each check: Tabellenbuch Metall (cut length of bent parts, DIN 6935); Machinery's Handbook,
// 31st edition, p. 1421; lecture notes of the University of Seville on sheet bending; Groover, Fundamentals
// of Modern Manufacturing, 4th edition, example 20.2 (recalled, recomputed).

#include "sim/plan/bend_allowance.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "sim/errors.h"
#include "sim/units.h"
#include "tests/tolerance.h"

namespace {

using namespace overbend::plan;
using overbend::degree;
using overbend::pi;
using overbend::tests::relative_error;

}  // namespace

TEST_CASE("DIN 6935: the book's part, opening angle 60 deg, legs 16 and 21, r 6, s 5") {
    // The book reads k = 0.7 off a diagram and finds v = 5.77 and L = 31.23; by its formula k = 0.6896.
    CHECK(std::abs(din_k(6.0, 5.0) - 0.6896) < 5e-5);
    CHECK(std::abs(din_compensation(6.0, 5.0, 120.0 * degree) - 5.823) < 5e-4);
    CHECK(std::abs(din_developed(16.0, 21.0, 6.0, 5.0, 120.0 * degree) - 31.177) < 5e-4);
    CHECK(std::abs(din_developed(16.0, 21.0, 6.0, 5.0, 120.0 * degree) - 31.23) < 0.06);
}

TEST_CASE("DIN 6935: the book's table of v for 90 deg, in tenths of a millimetre") {
    // Tabellenbuch Metall, table of compensation values (recalled): r, s, v in mm.
    const double table[][3] = {{1, 0.4, 1.0}, {1, 1, 1.9},    {1.6, 1, 2.1}, {1.6, 1.5, 2.9}, {2.5, 1, 2.4},
                               {2.5, 2, 4.0}, {4, 1, 3.0},    {4, 3, 6.0},   {6, 1, 3.8},     {6, 2.5, 5.9},
                               {6, 5, 9.9},   {10, 1, 5.5},   {10, 3, 8.1},  {10, 6, 12.7},   {16, 1, 8.1},
                               {16, 4, 11.9}, {16, 10, 21.0}, {20, 1, 9.8},  {20, 4, 13.4},   {20, 10, 22.3}};
    for (const auto& row : table) {
        const double radius = row[0], thickness = row[1], v = row[2];
        CAPTURE(radius);
        CAPTURE(thickness);
        CHECK(std::abs(din_compensation(radius, thickness, 90.0 * degree) - v) < 0.0501);
    }
}

TEST_CASE("DIN 6935: k between a sharp corner and a wide bend") {
    CHECK(din_k(0.0, 1.0) == 0.0);
    CHECK(din_k(0.01, 1.0) == 0.0);
    CHECK(std::abs(din_k(5.0, 1.0) - 0.9995) < 5e-5);
    CHECK(din_k(5.001, 1.0) == 1.0);
    CHECK(relative_error(din_allowance(10.0, 1.0, 90.0 * degree), 0.5 * pi * 10.5) < 1e-14);
}

TEST_CASE("DIN 6935: v has no step at 90 deg, and none is left under 15 deg of bend") {
    const double below = din_compensation(2.0, 1.0, 90.0 * degree - 1e-9);
    const double above = din_compensation(2.0, 1.0, 90.0 * degree + 1e-9);
    CHECK(std::abs(below - above) < 1e-7);
    CHECK(din_compensation(2.0, 1.0, 15.0 * degree) > 0.0);
    CHECK(din_compensation(2.0, 1.0, 14.99 * degree) == 0.0);
    CHECK(din_developed(10.0, 20.0, 2.0, 1.0, 0.0) == 30.0);
}

TEST_CASE("Machinery's Handbook: a soft steel part with two bends, in inches") {
    // T 0.125; 3.5 straight; 180 deg at R 0.375 takes 1.338, 60 deg at R 0.625 takes 0.707; 5.545 in all.
    const double first = handbook_allowance(0.375, 0.125, 180.0 * degree, Hardness::medium);
    const double second = handbook_allowance(0.625, 0.125, 60.0 * degree, Hardness::medium);
    CHECK(std::abs(first - 1.338) < 0.00051);
    CHECK(std::abs(second - 0.707) < 0.00051);
    CHECK(std::abs(3.5 + first + second - 5.545) < 0.00051);
}

TEST_CASE("Machinery's Handbook: the three lines at 90 deg") {
    CHECK(relative_error(handbook_allowance(2.0, 1.0, 90.0 * degree, Hardness::soft), 0.55 + 3.14) < 1e-14);
    CHECK(relative_error(handbook_allowance(2.0, 1.0, 90.0 * degree, Hardness::medium), 0.64 + 3.14) < 1e-14);
    CHECK(relative_error(handbook_allowance(2.0, 1.0, 90.0 * degree, Hardness::hard), 0.71 + 3.14) < 1e-14);
    // They are the k-factors 0.350, 0.407 and 0.452.
    for (const auto& [hardness, k] :
         {std::pair(Hardness::soft, 0.350), {Hardness::medium, 0.407}, {Hardness::hard, 0.452}})
        CHECK(relative_error(handbook_allowance(2.0, 1.0, 90.0 * degree, hardness),
                             k_factor_allowance(2.0, 1.0, 90.0 * degree, k)) < 1e-3);
}

TEST_CASE("k-factor: the lecture notes' part, legs 10 and 10, t 2, 90 deg") {
    CHECK(std::abs(20.0 + k_factor_allowance(1.0, 2.0, 90.0 * degree, 0.42) - 22.89) < 0.0051);
    CHECK(std::abs(20.0 + k_factor_allowance(10.0, 2.0, 90.0 * degree, 0.50) - 37.28) < 0.0051);
    CHECK(std::abs(20.0 + k_factor_allowance(1.0, 2.0, 90.0 * degree, 0.50) - 23.14) < 0.0051);
}

TEST_CASE("k-factor: the textbook's bracket, T 3.2, R 4.75, 60 deg, K 0.33") {
    const double allowance = k_factor_allowance(4.75, 3.2, 60.0 * degree, 0.33);
    CHECK(std::abs(allowance - 6.08) < 0.0051);
    CHECK(std::abs(38.0 + allowance + 25.0 - 69.08) < 0.0051);
}

TEST_CASE("Values out of range are refused") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS(din_k(-1.0, 1.0), overbend::OutOfRange);
    CHECK_THROWS_AS(din_allowance(1.0, 0.0, 1.0), overbend::OutOfRange);
    CHECK_THROWS_AS(din_allowance(1.0, 1.0, -0.1), overbend::OutOfRange);
    CHECK_THROWS_AS(din_compensation(1.0, 1.0, 3.2), overbend::OutOfRange);
    CHECK_THROWS_AS(din_compensation(nan, 1.0, 1.0), overbend::OutOfRange);
    CHECK_THROWS_AS(din_developed(1.0, 20.0, 2.0, 1.0, 90.0 * degree), overbend::OutOfRange);
    CHECK_THROWS_AS(handbook_allowance(1.0, nan, 1.0, Hardness::soft), overbend::OutOfRange);
    CHECK_THROWS_AS(k_factor_allowance(1.0, 1.0, 1.0, 1.2), overbend::OutOfRange);
    CHECK_NOTHROW(din_allowance(1.0, 1.0, 180.0 * degree));
}
