// A cantilever of the strip's own beam elements with an elastic law (a yield stress that is never reached),
// under a Newton loop of its own; L/t = 1000, so that stretch and shear do not count.
//
// Units  mm, rad, MPa, N per mm of width.

#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "sim/material/section.h"
#include "sim/strip/beam_element.h"
#include "sim/stroke/band_solve.h"

namespace overbend::tests {

// Clamped at its left end, along +x.
struct Cantilever {
    static constexpr double thickness = 1.0, length = 1000.0;
    static constexpr int layers = 5;
    static material::Card elastic() {
        material::Card card;
        card.youngs_modulus = 200e3;
        card.hardening = material::Linear{1e9, 0.0};
        return card;
    }

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
inline int solve_for(Cantilever& c, double force, double moment) {
    const int size = static_cast<int>(c.u.size());
    const double le = Cantilever::length / c.elements,
                 shear = 5.0 / 6.0 * c.law.shear_modulus * Cantilever::thickness;
    stroke::BandMatrix matrix;
    matrix.resize(size);
    for (int iteration = 0; iteration < 60; ++iteration) {
        matrix.clear();
        std::vector<double> residual(size, 0.0);
        residual[size - 2] = force, residual[size - 1] = moment;
        for (int e = 0; e < c.elements; ++e) {
            const strip::ElementStrain s = strip::element_strain(&c.u[3 * e], le);
            const material::SectionResponse r =
                material::respond(c.law, c.section.height.data(), c.section.weight.data(), Cantilever::layers,
                                  c.zero.data(), s.G, s.k);
            strip::Vec6 gradient;
            strip::Mat6 hessian;
            strip::element_forces(s, r, shear, le, gradient, hessian);
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

}  // namespace overbend::tests
