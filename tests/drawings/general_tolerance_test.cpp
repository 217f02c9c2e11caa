// General tolerances of ISO 2768-1:1989, class m, on both sides of the limits of its rows.
//
// Source  tables 1 to 3 of the standard, from memory.

#include <doctest/doctest.h>

#include "render/drawing/sizes_in_words.h"
#include "sim/plan/general_tolerance.h"
#include "sim/units.h"

using namespace overbend::drawing;
using namespace overbend::plan;
using overbend::degree;

TEST_CASE("lengths, radii and angles have the tolerance of their row") {
    CHECK(length_tolerance(0.49) == 0.0);
    CHECK(length_tolerance(6.0) == 0.1);
    CHECK(length_tolerance(6.01) == 0.2);
    CHECK(length_tolerance(30.0) == 0.2);
    CHECK(length_tolerance(120.0) == 0.3);
    CHECK(length_tolerance(121.0) == 0.5);
    CHECK(length_tolerance(1500.0) == 1.2);
    CHECK(length_tolerance(5000.0) == 0.0);
    CHECK(radius_tolerance(3.0) == 0.2);
    CHECK(radius_tolerance(3.1) == 0.5);
    CHECK(radius_tolerance(7.0) == 1.0);
    CHECK(angle_tolerance(10.0) == doctest::Approx(degree));
    CHECK(angle_tolerance(11.0) == doctest::Approx(0.5 * degree));
    CHECK(angle_tolerance(130.0) == doctest::Approx(degree / 6.0));
}

TEST_CASE("sizes in words have no trailing zeros, and a tolerance on request") {
    CHECK(length_words(8.0, Tolerances::none) == "8");
    CHECK(length_words(3.28, Tolerances::none) == "3.28");
    CHECK(length_words(8.0, Tolerances::iso_2768_m) == "8 \u00b10.2");
    CHECK(length_words(0.4, Tolerances::iso_2768_m) == "0.4");
    CHECK(radius_words(1.0, 2, Tolerances::iso_2768_m) == "2\u00d7 R1 \u00b10.2");
    CHECK(angle_words(1.5009831567151235, 20.0, Tolerances::iso_2768_m) == "86\u00b0 \u00b10.5\u00b0");
}
