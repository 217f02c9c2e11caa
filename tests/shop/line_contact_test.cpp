// Line contact by hand, and its limits.
//
//   E* of steel on steel: 210000 / (2 (1 - 0.09)) = 115385 MPa.
//   100 N/mm on an edge of 1 mm: p0 = sqrt(100 x 115385 / (pi x 1)) = sqrt(3672800) = 1916.5 MPa,
//   a = sqrt(4 x 100 x 1 / (pi x 115385)) = 0.03322 mm; and P = pi a p0 / 2.
//
// Source  K. L. Johnson, Contact Mechanics, Cambridge 1985, section 4.2(c), equations 4.43 to 4.45.

#include <doctest/doctest.h>

#include <random>

#include "sim/shop/line_contact.h"
#include "sim/units.h"

using namespace overbend::shop;
using doctest::Approx;
using overbend::pi;

TEST_CASE("line contact of steel on steel") {
    const double modulus = contact_modulus({210e3, 0.3}, {210e3, 0.3});
    CHECK(modulus == Approx(115385.0).epsilon(1e-5));
    const LineContact c = line_contact(100.0, modulus, 1.0, 0.0);
    CHECK(c.pressure == Approx(1916.5).epsilon(1e-4));
    CHECK(c.half_width == Approx(0.03322).epsilon(1e-3));
    CHECK_FALSE(c.capped);
    CHECK(c.mean == Approx(1505.2).epsilon(1e-4));  // pi/4 of it
    CHECK(c.mean * 2.0 * c.half_width == Approx(100.0));
}

TEST_CASE("a strip bears no more than three times its flow stress") {
    const LineContact c = line_contact(100.0, 115385.0, 1.0, 400.0);
    CHECK(c.capped);
    CHECK(c.pressure == 1200.0);
    CHECK(c.mean == 1200.0);
    CHECK(2.0 * c.half_width * c.pressure == Approx(100.0));  // that much strip carries the force
    CHECK_FALSE(line_contact(10.0, 115385.0, 1.0, 400.0).capped);
}

TEST_CASE("random contacts: the elastic pressure carries the force, and the radius for it is the radius") {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> force(1.0, 1000.0), radius(0.2, 20.0);
    for (int i = 0; i < 200; ++i) {
        const double P = force(random), R = radius(random);
        const LineContact c = line_contact(P, 1e5, R, 0.0);
        CHECK(0.5 * pi * c.half_width * c.pressure == Approx(P).epsilon(1e-9));
        CHECK(radius_for_pressure(P, 1e5, c.pressure) == Approx(R).epsilon(1e-9));
    }
}
