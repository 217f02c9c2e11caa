// A cantilever of the strip's own beam elements with an elastic law (a yield stress that is never reached),
// under a Newton loop of its own; L/t = 1000 unless it is told, so that stretch and shear do not count.
//
// Units  mm, rad, MPa, N per mm of width.

#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "sim/strip/mesh.h"
#include "sim/stroke/increment.h"
#include "sim/stroke/sections.h"

namespace overbend::tests {

// Clamped at its left end, along +x.
struct Cantilever {
    static constexpr double thickness = 1.0, slender = 1000.0;
    static constexpr int layers = 5;
    static material::Card elastic() {
        material::Card card;
        card.youngs_modulus = 200e3;
        card.hardening = material::Linear{1e9, 0.0};
        return card;
    }

    explicit Cantilever(int count, double along = slender)
        : elements(count), length(along), u(strip::node_unknowns * (count + 1), 0.0) {
        for (int i = 0; i <= elements; ++i) u[strip::node_unknowns * i] = length * i / elements;
    }
    int elements;
    double length;
    std::vector<double> u;
    material::LayerLaw law = material::LayerLaw(elastic());

    double stiffness() const { return law.modulus * thickness * thickness * thickness / 12.0; }
    const double* tip() const { return &u[strip::node_unknowns * elements]; }
    double tip_x() const { return tip()[0]; }
    double tip_y() const { return tip()[1]; }
    double tip_turn() const { return tip()[2]; }
};

// Equilibrium under a vertical force and a moment at the tip. Returns Newton's iterations, -1: none found.
inline int solve_for(Cantilever& c, double force, double moment) {
    std::vector<double> places;
    for (int i = 0; i <= c.elements; ++i) places.push_back(c.length * i / c.elements);
    const strip::StripState flat = strip::flat_strip(Cantilever::thickness, places, Cantilever::layers);
    const material::SectionShape shape({flat.layer_height, flat.layer_weight});
    const std::vector<double> lengths(c.elements, c.length / c.elements);
    stroke::StripStrains strains;
    stroke::Sections sections;
    const std::vector<double> straight = stroke::unknowns_of(flat);
    stroke::strain_strip(shape, lengths, straight, strains);
    stroke::start_sections(c.law, shape, flat, lengths, strains, {}, sections);
    stroke::Equations equations;
    equations.resize(c.elements + 1, 0);
    constexpr int each = strip::node_unknowns;
    for (int iteration = 0; iteration < 60; ++iteration) {
        equations.clear();
        stroke::strain_strip(shape, lengths, c.u, strains);
        if (!stroke::add_sections(c.law, shape, lengths, strains, straight, c.u, sections, equations))
            return -1;
        stroke::add_section_hessians(shape, lengths, strains, sections, equations);
        equations.take_over_gradient(strains, lengths);
        equations.take_over_hessian(strains, lengths);
        std::vector<double> residual = equations.gradient;
        for (double& r : residual) r = -r;
        residual[each * c.elements + 1] += force, residual[each * c.elements + 2] += moment;
        for (int i = 0; i < each; ++i) {  // the clamp, which keeps the section plane
            for (int j = 0; j <= stroke::BandMatrix::half; ++j)
                equations.matrix.at(i, j) = equations.matrix.at(j, i) = 0.0;
            equations.matrix.at(i, i) = c.law.modulus;
            residual[i] = 0.0;
        }
        // Far from equilibrium a pivot may be negative; that is no fault here.
        if (!stroke::factor(equations.matrix, -1e300)) return -1;
        stroke::solve(equations.matrix, residual);
        double turn = 0.0;
        for (std::size_t i = 2; i < residual.size(); i += each) turn = std::max(turn, std::abs(residual[i]));
        for (std::size_t i = 0; i < c.u.size(); ++i) c.u[i] += residual[i];
        if (turn < 1e-8) return iteration;
    }
    return -1;
}

}  // namespace overbend::tests
