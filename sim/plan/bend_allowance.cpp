#include "sim/plan/bend_allowance.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::plan {

namespace {

void check(double inside_radius, double thickness, double bend_angle) {
    if (!(std::isfinite(inside_radius) && inside_radius >= 0.0))
        throw OutOfRange("inside radius", std::to_string(inside_radius) + " mm cannot be",
                         "give 0 mm or more");
    if (!(std::isfinite(thickness) && thickness > 0.0))
        throw OutOfRange("thickness", std::to_string(thickness) + " mm cannot be", "give more than 0 mm");
    // A little over pi is what converting 180 degrees may give.
    if (!(bend_angle >= 0.0 && bend_angle <= pi + 1e-12))
        throw OutOfRange("bend angle", std::to_string(bend_angle / degree) + " deg cannot be",
                         "give from 0 to 180 deg");
}

// c of the straight-line formulas.
double handbook_coefficient(Hardness hardness) {
    switch (hardness) {
        case Hardness::soft:
            return 0.55;
        case Hardness::medium:
            return 0.64;
        case Hardness::hard:
            return 0.71;
    }
    return 0.71;
}

}  // namespace

double din_k(double inside_radius, double thickness) {
    check(inside_radius, thickness, 0.0);
    const double ratio = inside_radius / thickness;
    if (ratio > 5.0) return 1.0;
    // A sharp inside corner would give a logarithm of 0: the neutral fibre stays at the inside.
    return ratio > 0.0 ? std::max(0.0, 0.65 + 0.5 * std::log10(ratio)) : 0.0;
}

double din_allowance(double inside_radius, double thickness, double bend_angle) {
    check(inside_radius, thickness, bend_angle);
    return bend_angle * (inside_radius + 0.5 * din_k(inside_radius, thickness) * thickness);
}

double din_compensation(double inside_radius, double thickness, double bend_angle) {
    const double allowance = din_allowance(inside_radius, thickness, bend_angle);
    // Opening angles above 165 deg; 1e-12 is left for the rounding of converted degrees.
    if (bend_angle < 15.0 * degree - 1e-12) return 0.0;
    return 2.0 * outer_corner(inside_radius, thickness, bend_angle) - allowance;
}

double outer_corner(double inside_radius, double thickness, double bend_angle) {
    check(inside_radius, thickness, bend_angle);
    const double outer = inside_radius + thickness;
    return bend_angle >= 0.5 * pi ? outer : outer * std::tan(0.5 * bend_angle);
}

double din_developed(double leg, double other_leg, double inside_radius, double thickness,
                     double bend_angle) {
    const double compensation = din_compensation(inside_radius, thickness, bend_angle);
    const double corner = outer_corner(inside_radius, thickness, bend_angle);
    for (const double length : {leg, other_leg}) {
        if (std::isfinite(length) && length >= corner * (1.0 - 1e-12)) continue;
        throw OutOfRange("leg", std::to_string(length) + " mm is shorter than its half of the bend",
                         "give at least " + std::to_string(corner) + " mm");
    }
    return leg + other_leg - compensation;
}

double handbook_allowance(double inside_radius, double thickness, double bend_angle, Hardness hardness) {
    check(inside_radius, thickness, bend_angle);
    // 1.57 is the handbook's own figure for pi/2, kept so that its examples come out to the last digit.
    return (handbook_coefficient(hardness) * thickness + 1.57 * inside_radius) * bend_angle / (0.5 * pi);
}

double k_factor_allowance(double inside_radius, double thickness, double bend_angle, double k_factor) {
    check(inside_radius, thickness, bend_angle);
    if (!(k_factor >= 0.0 && k_factor <= 1.0))
        throw OutOfRange("k-factor", std::to_string(k_factor) + " lies outside the strip",
                         "give from 0 to 1");
    return bend_angle * (inside_radius + k_factor * thickness);
}

}  // namespace overbend::plan
