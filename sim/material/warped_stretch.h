// The stretch of one layer of a section that warps (section_shape.h), with its derivatives by the section's
// strains: of one layer, or of several at a time, as Number is a double or four of them (four.h).
//
// T_j with dz = r dy, r = G - k y, z = G y - k y^2/2 and y the height without warp is an integral of a
// polynomial of y, and so are its derivatives at a fixed z, where dy/dG = - y/r and dy/dk = y^2/(2 r):
//   T = G psi(0) + int r^2 L dy    T_G = psi(0) + G int L dy    T_k = - int z L dy
//   T_Gk = z L y/r - int y (z L)' dy    T_kk = - z L y^2/(2 r) + int y^2 (z L)' dy/2    T_GG = - 2 k T_Gk/G
// with (z L)' by z, L_1 = 2 z/t, L_2 = 6 z^2/t^2 - 1/2. All at the held curvature.
//
// Units  mm, 1/mm.

#pragma once

#include "sim/material/kernels.h"

namespace overbend::material {

// A layer's lambda^2 with its derivatives by (G, k, c_1, c_2), and the second ones by G or k and c.
template <class Number>
struct Stretch {
    Number value, by[4], Gc[2], kc[2];
};

// Below this share of G^2 a layer has no stretch left.
constexpr double least_square = 1e-3;

// The square of the stretch without warp at the held curvature.
template <class Number>
__attribute__((always_inline)) inline Number plain_square(const HeldSection& at, Number z) {
    return at.G * at.G - 2.0 * at.q * z;
}

// r: the root of plain_square.
template <class Number>
__attribute__((always_inline)) inline Stretch<Number> stretch_at(const HeldSection& at, Number z, Number r) {
    const double G = at.G, k = at.q, square = G * G, t = at.thickness;
    const double once = 2.0 / t, twice = 6.0 / (t * t);
    const Number y = 2.0 * z / (G + r);
    const Number a = G * y, b = k * y * y, mixed = k * a, other = k * b, bb = b * b;
    // Integrals over y, divided by y.
    const Number z1 = 0.5 * a - b * (1.0 / 6.0), z2 = a * (a * (1.0 / 3.0) - 0.25 * b) + 0.05 * bb;
    const Number z3 = a * (a * (0.25 * a - 0.3 * b) + 0.125 * bb) - bb * b * (1.0 / 56.0);
    const Number r2 = square - mixed + other * (1.0 / 3.0);
    const Number r2z = a * (0.5 * square - mixed * (5.0 / 6.0) + 0.5 * other) - 0.1 * other * b;
    const Number r2z2 =
        a * (a * (square / 3.0 - 0.75 * mixed + 0.65 * other) - 0.25 * other * b) + other * bb * (1.0 / 28.0);
    const Number q1 = -2.0 * once * y * z2, q2 = -2.0 * y * (twice * z3 - 0.5 * z1);
    Stretch<Number> s;
    s.by[2] = 2.0 * (G * at.middle[0] + y * once * r2z);
    s.by[3] = 2.0 * (G * at.middle[1] + y * (twice * r2z2 - 0.5 * r2));
    s.Gc[0] = 2.0 * (at.middle[0] + a * once * z1) + at.q_G * q1;
    s.Gc[1] = 2.0 * (at.middle[1] + a * (twice * z2 - 0.5)) + at.q_G * q2;
    s.kc[0] = at.q_k * q1, s.kc[1] = at.q_k * q2;
    s.value = square - 2.0 * at.k * z + at.c[0] * s.by[2] + at.c[1] * s.by[3];
    s.by[0] = 2.0 * G + at.c[0] * s.Gc[0] + at.c[1] * s.Gc[1];
    s.by[1] = at.c[0] * s.kc[0] + at.c[1] * s.kc[1] - 2.0 * z;
    return s;
}

// The second derivatives of lambda^2 by G and k alone; those by c twice are 0.
template <class Number>
struct StretchCurve {
    Number GG, Gk, kk;
};

// Second derivatives by (G, q) as those by (G, k).
template <class Number>
__attribute__((always_inline)) inline void chain_held(const HeldSection& at, Number by_q, Number& GG,
                                                      Number& Gk, Number& kk) {
    if (at.same) return;
    GG = GG + 2.0 * Gk * at.q_G + kk * (at.q_G * at.q_G) + by_q * at.q_GG;
    Gk = Gk * at.q_k + kk * (at.q_G * at.q_k) + by_q * at.q_Gk;
    kk = kk * (at.q_k * at.q_k) + by_q * at.q_kk;
}

// r: as above.
template <class Number>
__attribute__((always_inline)) inline StretchCurve<Number> stretch_curve_at(const HeldSection& at, Number z,
                                                                            Number r) {
    const double G = at.G, k = at.q, once = 2.0 / at.thickness, twice = 6.0 / (at.thickness * at.thickness);
    const Number y = 2.0 * z / (G + r), over = z / r;
    const Number a = G * y, b = k * y * y, bb = b * b;
    const Number yz = a * (1.0 / 3.0) - 0.125 * b, yz2 = a * (0.25 * a - 0.2 * b) + bb * (1.0 / 24.0);
    const Number y2z = 0.25 * a - 0.1 * b, y2z2 = a * (0.2 * a - b * (1.0 / 6.0)) + bb * (1.0 / 28.0);
    const Number zL1 = once * z * over, zL2 = over * (twice * z * z - 0.5);
    const Number Gk1 = zL1 - 2.0 * once * y * yz, Gk2 = zL2 - y * (3.0 * twice * yz2 - 0.25);
    const Number kk1 = once * y * y2z - 0.5 * zL1;
    const Number kk2 = y * (1.5 * twice * y2z2 - 1.0 / 12.0) - 0.5 * zL2;
    StretchCurve<Number> curve;
    curve.Gk = 2.0 * y * (at.c[0] * Gk1 + at.c[1] * Gk2);
    curve.GG = 2.0 - (2.0 * k / G) * curve.Gk;
    curve.kk = 2.0 * y * y * (at.c[0] * kk1 + at.c[1] * kk2);
    if (at.same) return curve;
    const Number z1 = 0.5 * a - b * (1.0 / 6.0), z2 = a * (a * (1.0 / 3.0) - 0.25 * b) + 0.05 * bb;
    const Number z3 = a * (a * (0.25 * a - 0.3 * b) + 0.125 * bb) - bb * b * (1.0 / 56.0);
    const Number by_q = -2.0 * y * (at.c[0] * once * z2 + at.c[1] * (twice * z3 - 0.5 * z1));
    chain_held(at, by_q, curve.GG, curve.Gk, curve.kk);
    return curve;
}

}  // namespace overbend::material
