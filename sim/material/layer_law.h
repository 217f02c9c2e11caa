// One layer of the strip: hoop and shear stress over hoop and shear strain, elastic-plastic with history.
//
// Stresses are measured from the radial one, s = sigma_hoop - sigma_radial and w = sigma_width -
// sigma_radial; bending an incompressible strip works against s, and a wide strip does not strain across its
// width:
//   elastic    s = E/(1-nu^2) ((e - e_p) - nu w_p),  w = E/(1-nu^2) (nu (e - e_p) - w_p),  dtau = G dg
//   yield      q(s - X, w - V, tau - Z) = sigma_y(p),  q(s, w, tau)^2 = s^2 - c s w + w^2 + 3 tau^2,
//              c = 2 r/(1 + r)  (R. Hill's, alike in all directions of the sheet and with von Mises' shear
//              between its faces; r = 1 is von Mises')
//   flow       normal to q, with dp the equivalent plastic strain; of the shear strain g, 3 (tau - Z)/q dp
//   back stress  X is the sum of up to two, each after Armstrong and Frederick, towards the stress:
//                dX_i = C_i (s - X)/q dp - gamma_i X_i dp, so V and Z; uniaxial C and gamma
//   modulus    E = E0 - (E0 - Ea)(1 - exp(-xi p)): falls with the plastic strain. Within an increment it is
//                that of its start; at the increment's end the stress stays and the elastic strain grows.
// In the basis a = (s + w)/sqrt2, b = (s - w)/sqrt2 all of this is diagonal: q^2 = h_a a^2 + h_b b^2 with
// h_a = 1/(1 + r) and h_b = (1 + 2 r)/(1 + r), elastic moduli E/(1-nu) and E/(1+nu), flow (h_a a, h_b b)
// dp/q; shear goes with them as a third direction, with h_c = 3 and G. Backward Euler then leaves one
// equation for dp: each stress less its back stress is that of the elastic trial over 1 + (h M + C)
// dp/sigma_y.
//
// Shear strain is given as its increment in axes that go with the layer, since a layer that turns and
// stretches has no other that could be added up; the shear stress is what is kept.
//
// A narrow strip is freer across its width. The share `hold` of nu and c, 1 in plane strain, is what is left
// of the coupling: with 0 there is no width stress at all, which is uniaxial bending; see width_hold.
//
// The first yield of a plane-strain strip comes earlier than 2/sqrt3 sigma_y, because its width stress is
// only nu times the hoop stress while elastic; the law that leaves the width stress out misses that (moments
// of barely plastic strips by 1 per cent).
//
// Units   MPa, strains logarithmic; energies per volume, MPa.
// Source  plane-stress return mapping in this basis: J. C. Simo & R. L. Taylor, Int. J. Numer. Methods Eng.
//         22 (1986) 649-670; back stress: P. J. Armstrong & C. O. Frederick, CEGB report RD/B/N731 (1966);
//         sums of several: J. L. Chaboche, Int. J. Plasticity 2 (1986) 149-188; falling modulus: F. Yoshida,
//         T. Uemori & K. Fujiwara, Int. J. Plasticity 18 (2002) 633-659; normal anisotropy: R. Hill, The
//         Mathematical Theory of Plasticity, Oxford 1950, ch. XII. All from memory.

#pragma once

#include <algorithm>
#include <cmath>

#include "sim/material/flow_curve.h"
#include "sim/material/lane_law.h"

namespace overbend::material {

// How much of plane strain a strip of this width over thickness keeps: 1 from 8 on, 0 (uniaxial) up to 1, in
// proportion between. Common practice, no source.
inline double width_hold(double width_over_thickness) {
    return std::clamp((width_over_thickness - 1.0) / 7.0, 0.0, 1.0);
}

struct LayerLaw {
    LayerLaw() = default;
    explicit LayerLaw(const Card& card, double hold = 1.0)
        : shear_modulus(card.youngs_modulus / (2.0 * (1.0 + card.poisson))),
          curve(card.hardening, card.youngs_modulus) {
        for (const Backstress& b : card.backstress) {
            if (!(b.C > 0.0) || backstresses == most_backstresses) continue;
            C[backstresses] = b.C;
            gamma[backstresses++] = b.gamma;
        }
        if (card.modulus_drop) {
            drop = 1.0 - card.modulus_drop->to / card.youngs_modulus;
            drop_rate = card.modulus_drop->rate;
        }
        const double nu = hold * card.poisson, c = hold * 2.0 * card.r_value / (1.0 + card.r_value);
        modulus = card.youngs_modulus / (1.0 - nu * nu);
        modulus_a = card.youngs_modulus / (1.0 - nu);
        modulus_b = card.youngs_modulus / (1.0 + nu);
        yield_a = 1.0 - 0.5 * c;
        yield_b = 1.0 + 0.5 * c;
    }

    double modulus = 0.0;        // E' = E / (1 - nu^2), MPa
    double shear_modulus = 0.0;  // G, MPa
    double modulus_a = 0.0, modulus_b = 0.0;
    double yield_a = 0.5, yield_b = 1.5;  // h_a, h_b
    FlowCurve curve;
    int backstresses = 0;
    double C[most_backstresses] = {};      // MPa, uniaxial
    double gamma[most_backstresses] = {};  // per equivalent plastic strain
    double drop = 0.0, drop_rate = 0.0;    // (E0 - Ea)/E0, xi

    // E over E0 after an accumulated plastic strain p.
    double modulus_left(double p) const {
        return drop == 0.0 ? 1.0 : 1.0 - drop * (1.0 - std::exp(-drop_rate * p));
    }

    // Hoop stress of a fully plastic, not yet hardened layer, whose width does not strain: von Mises' in
    // plane strain 2/sqrt3 sigma_y, (1 + r)/sqrt(1 + 2 r) sigma_y with anisotropy. MPa
    double plane_strain_yield() const { return curve.first_yield() / std::sqrt(yield_a * yield_b); }
};

// The same for kernels; the law must outlive it.
LaneLaw lane_law(const LayerLaw& law);

// What a layer has been through.
struct LayerHistory {
    double plastic_strain = 0.0;  // hoop
    double width_plastic_strain = 0.0;
    double accumulated = 0.0;                         // p, never falls
    double backstress[most_backstresses] = {};        // X_i, MPa
    double width_backstress[most_backstresses] = {};  // V_i, MPa
    double shear_stress = 0.0;                        // tau, MPa
    double shear_backstress[most_backstresses] = {};  // Z_i, MPa
};
inline bool operator==(const LayerHistory& a, const LayerHistory& b) {
    bool same = a.plastic_strain == b.plastic_strain && a.width_plastic_strain == b.width_plastic_strain &&
                a.accumulated == b.accumulated && a.shear_stress == b.shear_stress;
    for (int i = 0; i < most_backstresses; ++i)
        same = same && a.backstress[i] == b.backstress[i] && a.width_backstress[i] == b.width_backstress[i] &&
               a.shear_backstress[i] == b.shear_backstress[i];
    return same;
}

// A layer at the start of an increment: what every evaluation within the increment needs, worked out once.
struct LayerStart {
    double a = 0.0, b = 0.0;                          // stress at no hoop strain, in the diagonal basis, MPa
    double c = 0.0;                                   // shear stress, MPa
    double left = 1.0;                                // of the moduli
    double back_a = 0.0, back_b = 0.0, back_c = 0.0;  // back stress in that basis, the sum
    double backs_a[most_backstresses] = {};           // and each
    double backs_b[most_backstresses] = {};
    double backs_c[most_backstresses] = {};
    double accumulated = 0.0;                // p
    double yield = 0.0, yield_square = 0.0;  // MPa
    double work = 0.0;                       // of the flow curve up to p, MPa
};

// The start of a layer in a kernel's rows: one every `stride` numbers, from where the layer's own begin.
void store_start(const LayerLaw& law, const LayerStart& start, double* rows, int stride);

namespace layer_detail {

constexpr double root_half = 0.70710678118654752;
constexpr double yield_c = 3.0;   // h_c
constexpr double enough = 1e-11;  // residual of the yield condition over the yield stress
// A layer that ended its last increment on the yield surface, but for rounding, starts elastically: without
// this it flows by 1e-16 at one evaluation and not at the next, and Newton's iterations do not end.
constexpr double on_surface = 1e-9;

// Residual q(xi) - sigma_y of a plastic trial dp = d, with its derivative.
struct Trial {
    FlowPoint now;
    double fade[most_backstresses] = {};  // 1/(1 + gamma_i d)
    double g = 0.0, g_d = 0.0;            // d/sigma_y and its derivative
    double Da = 1.0, Db = 1.0, Dc = 1.0;
    double xi_a = 0.0, xi_b = 0.0, xi_c = 0.0;        // stress less back stress
    double xi_a_d = 0.0, xi_b_d = 0.0, xi_c_d = 0.0;  // their derivatives by d
    double q = 0.0, value = 0.0, slope = 0.0;
};

// a, b, c: the elastic trial stress.
inline Trial plastic_trial(const LayerLaw& law, const LayerStart& was, double a, double b, double c,
                           double d) {
    Trial t;
    t.now = law.curve.at(was.accumulated + d);
    t.g = d / t.now.stress;
    t.g_d = (1.0 - t.g * t.now.slope) / t.now.stress;
    // Sums over the faded back stresses, and their derivatives by d.
    double X_a = 0.0, X_b = 0.0, X_c = 0.0, X_a_d = 0.0, X_b_d = 0.0, X_c_d = 0.0, C = 0.0, C_d = 0.0;
    for (int i = 0; i < law.backstresses; ++i) {
        const double fade = 1.0 / (1.0 + law.gamma[i] * d), fade_d = -law.gamma[i] * fade * fade;
        t.fade[i] = fade;
        X_a += was.backs_a[i] * fade, X_a_d += was.backs_a[i] * fade_d;
        X_b += was.backs_b[i] * fade, X_b_d += was.backs_b[i] * fade_d;
        X_c += was.backs_c[i] * fade, X_c_d += was.backs_c[i] * fade_d;
        C += law.C[i] * fade, C_d += law.C[i] * fade_d;
    }
    const double stiff_a = was.left * law.modulus_a * law.yield_a + C;
    const double stiff_b = was.left * law.modulus_b * law.yield_b + C;
    const double stiff_c = was.left * law.shear_modulus * yield_c + C;
    t.Da = 1.0 + t.g * stiff_a;
    t.Db = 1.0 + t.g * stiff_b;
    t.Dc = 1.0 + t.g * stiff_c;
    t.xi_a = (a - X_a) / t.Da;
    t.xi_b = (b - X_b) / t.Db;
    t.xi_c = (c - X_c) / t.Dc;
    t.xi_a_d = -(X_a_d + t.xi_a * (t.g_d * stiff_a + C_d * t.g)) / t.Da;
    t.xi_b_d = -(X_b_d + t.xi_b * (t.g_d * stiff_b + C_d * t.g)) / t.Db;
    t.xi_c_d = -(X_c_d + t.xi_c * (t.g_d * stiff_c + C_d * t.g)) / t.Dc;
    t.q =
        std::sqrt(law.yield_a * t.xi_a * t.xi_a + law.yield_b * t.xi_b * t.xi_b + yield_c * t.xi_c * t.xi_c);
    t.value = t.q - t.now.stress;
    t.slope =
        (law.yield_a * t.xi_a * t.xi_a_d + law.yield_b * t.xi_b * t.xi_b_d + yield_c * t.xi_c * t.xi_c_d) /
            t.q -
        t.now.slope;
    return t;
}

}  // namespace layer_detail

struct LayerResponse {
    double stress = 0.0;        // s, MPa
    double width_stress = 0.0;  // w, MPa
    double shear_stress = 0.0;  // tau, MPa
    // Of the backward-Euler increment, MPa: ds/de; dtau/de, which is ds/dg too when gamma is 0; dtau/dg.
    double tangent = 0.0, cross_tangent = 0.0, shear_tangent = 0.0;
    double energy = 0.0;  // MPa, with d energy/de = s and d energy/dg = tau (exactly so when gamma is 0)
    double flow = 0.0;    // dp >= 0; 0: the increment is elastic
    double flow_a = 0.0, flow_b = 0.0, flow_c = 0.0;  // plastic strain increments in the diagonal basis
};

inline LayerStart start_of(const LayerLaw& law, const LayerHistory& was) {
    using layer_detail::root_half;
    LayerStart s;
    s.left = law.modulus_left(was.accumulated);
    s.a = -root_half * s.left * law.modulus_a * (was.plastic_strain + was.width_plastic_strain);
    s.b = -root_half * s.left * law.modulus_b * (was.plastic_strain - was.width_plastic_strain);
    for (int i = 0; i < law.backstresses; ++i) {
        s.backs_a[i] = root_half * (was.backstress[i] + was.width_backstress[i]);
        s.backs_b[i] = root_half * (was.backstress[i] - was.width_backstress[i]);
        s.backs_c[i] = was.shear_backstress[i];
        s.back_a += s.backs_a[i], s.back_b += s.backs_b[i], s.back_c += s.backs_c[i];
    }
    s.c = was.shear_stress;
    s.accumulated = was.accumulated;
    const FlowPoint f = law.curve.at(was.accumulated);
    s.yield = f.stress;
    s.yield_square = f.stress * f.stress;
    s.work = f.work;
    return s;
}

// The layer at hoop strain e and the increment g of shear strain. guess: a flow near the one to come, 0 when
// none is known; it saves iterations.
inline LayerResponse respond(const LayerLaw& law, const LayerStart& was, double e, double g, double guess) {
    using layer_detail::root_half;
    using layer_detail::yield_c;
    const double Ma = was.left * law.modulus_a, Mb = was.left * law.modulus_b;
    const double Mc = was.left * law.shear_modulus;
    const double a_e = root_half * Ma, b_e = root_half * Mb;
    const double a = was.a + a_e * e, b = was.b + b_e * e, c = was.c + Mc * g;
    const double xi_a = a - was.back_a, xi_b = b - was.back_b, xi_c = c - was.back_c;

    LayerResponse r;
    if (law.yield_a * xi_a * xi_a + law.yield_b * xi_b * xi_b + yield_c * xi_c * xi_c <=
        was.yield_square * (1.0 + layer_detail::on_surface)) {
        r.stress = root_half * (a + b);
        r.width_stress = root_half * (a - b);
        r.shear_stress = c;
        r.tangent = was.left * law.modulus;
        r.shear_tangent = Mc;
        r.energy = 0.5 * (a * a / Ma + b * b / Mb + c * c / Mc);
        return r;
    }

    // The residual falls with d and is convex: Newton converges to the root from the left, after one step
    // from anywhere.
    double d = guess;
    layer_detail::Trial t = layer_detail::plastic_trial(law, was, a, b, c, d);
    for (int i = 0; i < 60 && !(std::abs(t.value) <= layer_detail::enough * was.yield); ++i) {
        d = std::max(0.0, d - t.value / t.slope);
        t = layer_detail::plastic_trial(law, was, a, b, c, d);
    }

    r.flow = d;
    r.flow_a = law.yield_a * t.g * t.xi_a;
    r.flow_b = law.yield_b * t.g * t.xi_b;
    r.flow_c = yield_c * t.g * t.xi_c;
    const double new_a = a - Ma * r.flow_a, new_b = b - Mb * r.flow_b;
    r.stress = root_half * (new_a + new_b);
    r.width_stress = root_half * (new_a - new_b);
    r.shear_stress = c - Mc * r.flow_c;

    // Tangent: differentiate residual and stresses by e and g through d.
    const double d_e =
        -(law.yield_a * t.xi_a * a_e / t.Da + law.yield_b * t.xi_b * b_e / t.Db) / (t.q * t.slope);
    const double d_g = -yield_c * t.xi_c * Mc / (t.Dc * t.q * t.slope);
    const double xi_a_e = a_e / t.Da + t.xi_a_d * d_e, xi_b_e = b_e / t.Db + t.xi_b_d * d_e;
    const double new_a_e = a_e - Ma * law.yield_a * (t.g_d * d_e * t.xi_a + t.g * xi_a_e);
    const double new_b_e = b_e - Mb * law.yield_b * (t.g_d * d_e * t.xi_b + t.g * xi_b_e);
    r.tangent = root_half * (new_a_e + new_b_e);
    const double flow_c_d = yield_c * (t.g_d * t.xi_c + t.g * t.xi_c_d);
    r.cross_tangent = -Mc * flow_c_d * d_e;
    r.shear_tangent = Mc - Mc * (yield_c * t.g * Mc / t.Dc + flow_c_d * d_g);

    const double new_c = r.shear_stress;
    r.energy = 0.5 * (new_a * new_a / Ma + new_b * new_b / Mb + new_c * new_c / Mc) + t.now.work - was.work;
    // Work against the back stresses; without fade this is their exact potential.
    for (int i = 0; i < law.backstresses; ++i)
        r.energy += (was.backs_a[i] * r.flow_a + was.backs_b[i] * r.flow_b + was.backs_c[i] * r.flow_c +
                     0.5 * law.C[i] * t.g * (t.xi_a * r.flow_a + t.xi_b * r.flow_b + t.xi_c * r.flow_c)) *
                    t.fade[i];
    return r;
}
inline LayerResponse respond(const LayerLaw& law, const LayerHistory& was, double e, double g = 0.0) {
    return respond(law, start_of(law, was), e, g, 0.0);
}

// Elastic energy per volume of a layer under these stresses, MPa.
inline double elastic_energy(const LayerLaw& law, double accumulated, double stress, double width_stress,
                             double shear_stress) {
    const double sum = stress + width_stress, difference = stress - width_stress;
    return (0.25 * (sum * sum / law.modulus_a + difference * difference / law.modulus_b) +
            0.5 * shear_stress * shear_stress / law.shear_modulus) /
           law.modulus_left(accumulated);
}

inline double elastic_energy(const LayerLaw& law, double accumulated, const LayerResponse& r) {
    return elastic_energy(law, accumulated, r.stress, r.width_stress, r.shear_stress);
}

// The history after the increment that gave this response.
inline LayerHistory advance(const LayerLaw& law, const LayerHistory& was, const LayerResponse& r) {
    using layer_detail::root_half;
    LayerHistory now = was;
    now.shear_stress = r.shear_stress;
    if (r.flow <= 0.0) return now;
    now.plastic_strain = was.plastic_strain + root_half * (r.flow_a + r.flow_b);
    now.width_plastic_strain = was.width_plastic_strain + root_half * (r.flow_a - r.flow_b);
    now.accumulated = was.accumulated + r.flow;
    const double to_a = r.flow_a / law.yield_a, to_b = r.flow_b / law.yield_b,
                 to_c = r.flow_c / layer_detail::yield_c;
    for (int i = 0; i < law.backstresses; ++i) {
        const double fade = 1.0 / (1.0 + law.gamma[i] * r.flow), to = root_half * law.C[i];
        now.backstress[i] = (was.backstress[i] + to * (to_a + to_b)) * fade;
        now.width_backstress[i] = (was.width_backstress[i] + to * (to_a - to_b)) * fade;
        now.shear_backstress[i] = (was.shear_backstress[i] + law.C[i] * to_c) * fade;
    }
    if (law.drop > 0.0) {  // the same stress on a softer layer: what is strained elastically grows
        const double grown =
            1.0 / law.modulus_left(now.accumulated) - 1.0 / law.modulus_left(was.accumulated);
        const double strain_a = grown * (r.stress + r.width_stress) / law.modulus_a;
        const double strain_b = grown * (r.stress - r.width_stress) / law.modulus_b;
        now.plastic_strain -= 0.5 * (strain_a + strain_b);
        now.width_plastic_strain -= 0.5 * (strain_a - strain_b);
    }
    return now;
}

// Plastic work of the increment by the trapezoidal rule, MPa. stress, width_stress: at its start.
inline double plastic_work(const LayerLaw& law, const LayerHistory& was, double stress, double width_stress,
                           const LayerResponse& r, const LayerHistory& now) {
    const double hoop = (stress + r.stress) * (r.flow_a + r.flow_b);
    const double across = (width_stress + r.width_stress) * (r.flow_a - r.flow_b);
    double work = 0.5 * (hoop + across) * layer_detail::root_half +
                  0.5 * (was.shear_stress + r.shear_stress) * r.flow_c;
    // What a fall of the modulus adds to the elastic energy comes out of the work of the flow.
    if (law.drop > 0.0)
        work -= elastic_energy(law, now.accumulated, r) - elastic_energy(law, was.accumulated, r);
    return work;
}

}  // namespace overbend::material
