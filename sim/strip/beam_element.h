// A planar, geometrically exact beam element of unit width whose sections warp: two nodes, one strain.
//
// With the chord d = (r2 - r1) / L and the tangent t and normal n at the mean section turn,
//   stretch G = d . t,  slope g = d . n,  curvature k = (theta2 - theta1) / L,
//   warp phi_j, the mean of its nodes', with gradient c_j = (phi_j2 - phi_j1) / L.
// What layers make of these, and the energy of it: sim/material/section_shape.h, sim/stroke/sections.h.
//
// Unknowns  of a node: x, y, theta, phi_1, phi_2.   Units  mm, rad.
// Source    the beam of E. Reissner, ZAMP 23 (1972) 795-804; J. C. Simo, CMAME 49 (1985) 55-70 (from memory).

#pragma once

#include <Eigen/Core>
#include <cmath>

#include "sim/material/section_shape.h"

namespace overbend::strip {

constexpr int node_unknowns = 3 + material::warps;
constexpr int turn_unknown = 2;  // of a node: its place among them
constexpr int warp_unknown = 3;  // the first

struct ElementStrain {
    double G = 1.0, g = 0.0, k = 0.0;
    double tx = 1.0, ty = 0.0;                   // mean tangent; the normal is (-ty, tx)
    double warp[material::warps] = {};           // phi_j
    double warp_gradient[material::warps] = {};  // c_j, 1/mm

    material::SectionStrain section() const { return {G, k, warp_gradient[0], warp_gradient[1]}; }
};

// u: the unknowns of both nodes.
inline ElementStrain element_strain(const double* u, double length) {
    ElementStrain s;
    const double* v = u + node_unknowns;
    const double mean = 0.5 * (u[2] + v[2]);
    s.tx = std::cos(mean), s.ty = std::sin(mean);
    const double dx = (v[0] - u[0]) / length, dy = (v[1] - u[1]) / length;
    s.G = dx * s.tx + dy * s.ty;
    s.g = -dx * s.ty + dy * s.tx;
    s.k = (v[2] - u[2]) / length;
    for (int j = 0; j < material::warps; ++j) {
        s.warp[j] = 0.5 * (u[warp_unknown + j] + v[warp_unknown + j]);
        s.warp_gradient[j] = (v[warp_unknown + j] - u[warp_unknown + j]) / length;
    }
    return s;
}

// How G, g and k change with x, y and theta of the first node, then of the second one.
struct StrainGradient {
    double G[6], g[6], k[6];
};
inline StrainGradient strain_gradient(const ElementStrain& s, double length) {
    const double x = s.tx / length, y = s.ty / length, half = 0.5;
    return {{-x, -y, half * s.g, x, y, half * s.g},
            {y, -x, -half * s.G, -y, x, -half * s.G},
            {0.0, 0.0, -1.0 / length, 0.0, 0.0, 1.0 / length}};
}

}  // namespace overbend::strip
