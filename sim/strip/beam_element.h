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
//
// In p and q, the chord's components along t and n, m, the mean turn, and f, the turn from end to end:
//   dG = dp + g dm,  dg = dq - G dm,  dk = df / L,  d2G = 2 dq dm - G dm^2,  d2g = -2 dp dm - g dm^2
// (dp, dq: of the chord over L, at fixed t and n).
inline void element_forces(const ElementStrain& s, const material::SectionResponse& section,
                           double shear_stiffness, double length, Vec6& gradient, Mat6& hessian) {
    const double N = section.N, Q = shear_stiffness * s.g, S = shear_stiffness;
    const double m = length * (N * s.g - Q * s.G);  // by m
    const double fx = N * s.tx - Q * s.ty, fy = N * s.ty + Q * s.tx;
    gradient << -fx, -fy, 0.5 * m - section.M, fx, fy, 0.5 * m + section.M;

    // Energy per length, second derivatives.
    const double pp = section.N_G, qq = S;
    const double pm = section.N_G * s.g - Q, qm = N - S * s.G;
    const double mm = section.N_G * s.g * s.g + S * s.G * s.G - N * s.G - Q * s.g;
    const double pf = section.N_k / length, mf = section.N_k * s.g / length;
    const double ff = section.M_k / (length * length);

    // Chord along x and y.
    const double xx = (pp * s.tx * s.tx + qq * s.ty * s.ty) / length;
    const double xy = (pp - qq) * s.tx * s.ty / length;
    const double yy = (pp * s.ty * s.ty + qq * s.tx * s.tx) / length;
    const double xm = pm * s.tx - qm * s.ty, ym = pm * s.ty + qm * s.tx;
    const double xf = pf * s.tx, yf = pf * s.ty;
    // theta1 = m - f/2, theta2 = m + f/2.
    const double x1 = 0.5 * xm - xf, x2 = 0.5 * xm + xf, y1 = 0.5 * ym - yf, y2 = 0.5 * ym + yf;
    const double t11 = length * (0.25 * mm - mf + ff), t22 = length * (0.25 * mm + mf + ff),
                 t12 = length * (0.25 * mm - ff);
    hessian << xx, xy, -x1, -xx, -xy, -x2,  //
        xy, yy, -y1, -xy, -yy, -y2,         //
        -x1, -y1, t11, x1, y1, t12,         //
        -xx, -xy, x1, xx, xy, x2,           //
        -xy, -yy, y1, xy, yy, y2,           //
        -x2, -y2, t12, x2, y2, t22;
}

}  // namespace overbend::strip
