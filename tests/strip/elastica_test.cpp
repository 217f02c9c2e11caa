// The strip as an elastica: a cantilever rolled into a circle, one bent far by a load at its end; and a short
// one, which is sheared.
//
// Here    the cantilever of cantilever.h.

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>

#include "sim/units.h"
#include "tests/strip/cantilever.h"

using overbend::pi;
using overbend::tests::Cantilever;
using overbend::tests::solve_for;

namespace {

constexpr double length = Cantilever::slender;

}  // namespace

TEST_SUITE("strip") {
    // A moment 2 pi EI / L at the end makes a circle: the tip comes back to the clamp, turned through 2 pi.
    //
    // Source  geometry.
    // Allowed 1e-4 of the length, 1e-4 of the turn; measured: printed.
    TEST_CASE("an end moment rolls a cantilever into a full circle") {
        Cantilever c(100);
        const double full = 2.0 * pi * c.stiffness() / length;
        const int steps = 40;
        for (int i = 1; i <= steps; ++i) REQUIRE(solve_for(c, 0.0, full * i / steps) >= 0);
        std::printf("full circle: tip at %.2e, %.2e of the length, turned %.8f of 2 pi\n", c.tip_x() / length,
                    c.tip_y() / length, c.tip_turn() / (2.0 * pi));
        CHECK(std::abs(c.tip_x()) < 1e-4 * length);
        CHECK(std::abs(c.tip_y()) < 1e-4 * length);
        CHECK(std::abs(c.tip_turn() / (2.0 * pi) - 1.0) < 1e-4);
    }

    // Deflection w and shortening u of a cantilever under an end load P that keeps its direction, over P
    // L^2/EI.
    //
    // Source  K. Mattiasson, "Numerical results from large deflection beam and frame problems analysed by
    //         means of elliptic integrals", Int. J. Numer. Methods Eng. 17 (1981) 145-153, table of the
    //         end-loaded cantilever.
    // Allowed 1e-4; measured: printed.
    TEST_CASE("an end-loaded cantilever bends as the elliptic integrals say") {
        struct Row {
            double load, deflection, shortening;
        };
        Cantilever c(200);
        const double unit = c.stiffness() / (length * length);
        double reached = 0.0;
        for (const Row& row : {Row{1.0, 0.30172, 0.05643}, Row{2.0, 0.49346, 0.16064},
                               Row{5.0, 0.71379, 0.38763}, Row{10.0, 0.81061, 0.55500}}) {
            CAPTURE(row.load);
            const int steps = 60;
            for (int i = 1; i <= steps; ++i)
                REQUIRE(solve_for(c, unit * (reached + (row.load - reached) * i / steps), 0.0) >= 0);
            reached = row.load;
            const double deflection = c.tip_y() / length, shortening = 1.0 - c.tip_x() / length;
            std::printf("cantilever PL2/EI %4.0f: deflection %.5f (%+.1e), shortening %.5f (%+.1e)\n",
                        row.load, deflection, deflection - row.deflection, shortening,
                        shortening - row.shortening);
            CHECK(std::abs(deflection - row.deflection) < 1e-4);
            CHECK(std::abs(shortening - row.shortening) < 1e-4);
        }
    }

    // Six thicknesses long, in its middle, away from the clamp and the load. Its shear stress is the parabola
    // of equilibrium, 3 P/(2 t) (1 - (2 z/t)^2). Layers are sheared by g + u' + z^2/2 dk/ds, the last because
    // the section's heights change with the curvature, dk/ds = - 12 P/(E' t^3). So
    //   g = P/(G t) + P/(2 E' t),   phi_2 = - P/(G t) + P/(E' t).
    //
    // Source  worked out here from the equilibrium of an elastic strip.
    // Allowed 1 per cent; measured: printed.
    TEST_CASE("a short cantilever is sheared and warped as equilibrium says") {
        Cantilever c(60, 6.0);
        const double force = 1.0, t = Cantilever::thickness;
        REQUIRE(solve_for(c, force, 0.0) >= 0);
        const double sheared = force / (c.law.shear_modulus * t), bent = force / (c.law.modulus * t);
        const double* node = &c.u[overbend::strip::node_unknowns * 30];
        const double* next = node + overbend::strip::node_unknowns;
        const overbend::strip::ElementStrain middle = overbend::strip::element_strain(node, 0.1);
        std::printf("short cantilever: slope %.4e, by hand %.4e; warp %.4e, by hand %.4e\n", middle.g,
                    sheared + 0.5 * bent, middle.warp[1], bent - sheared);
        CHECK(next[1] > node[1]);
        CHECK(std::abs(middle.g / (sheared + 0.5 * bent) - 1.0) < 0.01);
        CHECK(std::abs(middle.warp[1] / (bent - sheared) - 1.0) < 0.01);
        CHECK(std::abs(middle.warp[0]) < 0.01 * sheared);
    }

}  // TEST_SUITE
