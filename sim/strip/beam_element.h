// A planar, geometrically exact beam element of unit width: two nodes, one point of integration.
//
// With the chord d = (r2 - r1) / L and the tangent t and normal n at the mean section turn,
//   stretch G = d . t,   shear g = d . n,   curvature k = (theta2 - theta1) / L.
// Energy L (W(G, k) + 1/2 S g^2); N, M and their tangents come from the section, S = 5/6 G_shear A.
//
// Degrees of freedom  x1, y1, theta1, x2, y2, theta2.   Units  mm, rad, N per mm width.
// Source  the beam of E. Reissner, ZAMP 23 (1972) 795-804; J. C. Simo, CMAME 49 (1985) 55-70 (from memory).

#pragma once

#include <Eigen/Core>
#include <cmath>

#include "sim/material/section.h"

namespace overbend::strip {

using Vec6 = Eigen::Matrix<double, 6, 1>;
using Mat6 = Eigen::Matrix<double, 6, 6>;

struct ElementStrain {
    double G = 1.0, g = 0.0, k = 0.0;
    double tx = 1.0, ty = 0.0;  // mean tangent; the normal is (-ty, tx)
};

inline ElementStrain element_strain(const double* u, double length) {
    ElementStrain s;
    const double mean = 0.5 * (u[2] + u[5]);
    s.tx = std::cos(mean), s.ty = std::sin(mean);
    const double dx = (u[3] - u[0]) / length, dy = (u[4] - u[1]) / length;
    s.G = dx * s.tx + dy * s.ty;
    s.g = -dx * s.ty + dy * s.tx;
    s.k = (u[5] - u[2]) / length;
    return s;
}

// Gradient and hessian of the element's energy by its degrees of freedom.
inline void element_forces(const ElementStrain& s, const material::SectionResponse& section,
                           double shear_stiffness, double length, Vec6& gradient, Mat6& hessian) {
    Vec6 to_G, to_g, to_k;
    to_G << -s.tx / length, -s.ty / length, 0.5 * s.g, s.tx / length, s.ty / length, 0.5 * s.g;
    to_g << s.ty / length, -s.tx / length, -0.5 * s.G, -s.ty / length, s.tx / length, -0.5 * s.G;
    to_k << 0.0, 0.0, -1.0 / length, 0.0, 0.0, 1.0 / length;
    const double Q = shear_stiffness * s.g;
    gradient = length * (section.N * to_G + Q * to_g + section.M * to_k);

    // Material part, then the second variations of G and g:
    //   d2G = 2 (n . dd) dm - G dm^2,  d2g = -2 (t . dd) dm - g dm^2,  dm the mean turn.
    Vec6 mean = Vec6::Zero(), along = Vec6::Zero(), across = Vec6::Zero();
    mean(2) = mean(5) = 0.5;
    along << -s.tx / length, -s.ty / length, 0.0, s.tx / length, s.ty / length, 0.0;
    across << s.ty / length, -s.tx / length, 0.0, -s.ty / length, s.tx / length, 0.0;
    hessian.noalias() = section.N_G * to_G * to_G.transpose();
    hessian.noalias() += section.N_k * (to_G * to_k.transpose() + to_k * to_G.transpose());
    hessian.noalias() += section.M_k * to_k * to_k.transpose();
    hessian.noalias() += shear_stiffness * to_g * to_g.transpose();
    const Vec6 mixed = section.N * across - Q * along;
    hessian.noalias() += mixed * mean.transpose() + mean * mixed.transpose();
    hessian.noalias() -= (section.N * s.G + Q * s.g) * mean * mean.transpose();
    hessian *= length;
}

}  // namespace overbend::strip
