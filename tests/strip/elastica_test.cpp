// The strip as an elastica: a cantilever rolled into a circle, and one bent far by a load at its end.
//
// Here    elements of the strip itself with an elastic law (a yield stress that is never reached), under a
// Newton
//         loop of this test's own; L/t = 1000, so that stretch and shear do not count.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

#include "sim/material/section.h"
#include "sim/strip/beam_element.h"
#include "sim/stroke/band_solve.h"

using namespace overbend;
using namespace overbend::strip;

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double thickness = 1.0, length = 1000.0;
constexpr int layers = 5;

material::Card elastic() {
    material::Card card;
    card.youngs_modulus = 200e3;
    card.hardening = material::Linear{1e9, 0.0};
    return card;
}

// Clamped at its left end, along +x.
struct Cantilever {
    explicit Cantilever(int count) : elements(count), u(3 * (count + 1), 0.0) {
        for (int i = 0; i <= elements; ++i) u[3 * i] = length * i / elements;
    }
    int elements;
    std::vector<double> u;
    material::LayerLaw law = material::LayerLaw(elastic());
    material::Layers section = material::gauss_layers(thickness, layers);
    std::vector<material::LayerHistory> zero = std::vector<material::LayerHistory>(layers);

    double stiffness() const { return law.modulus * thickness * thickness * thickness / 12.0; }
    double tip_x() const { return u[3 * elements]; }
    double tip_y() const { return u[3 * elements + 1]; }
    double tip_turn() const { return u[3 * elements + 2]; }
};

// Equilibrium under a vertical force and a moment at the tip. Returns Newton's iterations, -1: none found.
int solve_for(Cantilever& c, double force, double moment) {
    const int size = static_cast<int>(c.u.size());
    const double le = length / c.elements, shear = 5.0 / 6.0 * c.law.shear_modulus * thickness;
    stroke::BandMatrix matrix;
    matrix.resize(size);
    for (int iteration = 0; iteration < 60; ++iteration) {
        matrix.clear();
        std::vector<double> residual(size, 0.0);
        residual[size - 2] = force, residual[size - 1] = moment;
        for (int e = 0; e < c.elements; ++e) {
            const ElementStrain s = element_strain(&c.u[3 * e], le);
            const material::SectionResponse r = material::respond(
                c.law, c.section.height.data(), c.section.weight.data(), layers, c.zero.data(), s.G, s.k);
            Vec6 gradient;
            Mat6 hessian;
            element_forces(s, r, shear, le, gradient, hessian);
            for (int i = 0; i < 6; ++i) {
                residual[3 * e + i] -= gradient(i);
                for (int j = 0; j < 6; ++j) matrix.at(3 * e + i, 3 * e + j) += hessian(i, j);
            }
            matrix.join(3 * e, 3 * e + 5);
        }
        for (int i = 0; i < 3; ++i) {  // the clamp
            for (int j = 0; j < 6; ++j) matrix.at(i, j) = matrix.at(j, i) = 0.0;
            matrix.at(i, i) = c.law.modulus;
            residual[i] = 0.0;
        }
        // Far from equilibrium a pivot may be negative; that is no fault here.
        if (!stroke::factor(matrix, -1e300)) return -1;
        stroke::solve(matrix, residual);
        double turn = 0.0;
        for (int i = 2; i < size; i += 3) turn = std::max(turn, std::abs(residual[i]));
        for (int i = 0; i < size; ++i) c.u[i] += residual[i];
        if (turn < 1e-8) return iteration;
    }
    return -1;
}

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
    // means of elliptic
    //         integrals", Int. J. Numer. Methods Eng. 17 (1981) 145-153, table of the end-loaded cantilever.
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

}  // TEST_SUITE
