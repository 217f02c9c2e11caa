// The law of layer_law.h for four layers at a time.

#pragma once

#include "sim/material/four.h"
#include "sim/material/kernels.h"
#include "sim/material/lane_law.h"

namespace overbend::material::OVERBEND_LANES {

struct FlowFour {
    Four stress, slope, work;
};

OVERBEND_INLINE FlowFour curve_at(const LaneLaw& law, Four p) {
    constexpr long long leading = 0x7fff000000000000LL;
    const Four v = p + law.shift;
    double at[lanes];
    store(at, v);
    const double* cell[lanes];
    bool inside = true;
    for (int i = 0; i < lanes; ++i) {
        long long bits;
        __builtin_memcpy(&bits, &at[i], sizeof bits);
        const long long index = (bits >> 48) - law.first_cell;
        inside = inside && index >= 0 && index < law.cells_used;
        cell[i] = law.cells + 8 * index;
    }
    FlowFour f;
    if (!inside) {
        double point[lanes][4] = {};
        for (int i = 0; i < lanes; ++i) law.curve_at(law.curve, p[i], point[i]);
        Four none = load(point[3]);
        f = {load(point[0]), load(point[1]), load(point[2])};
        transpose(f.stress, f.slope, f.work, none);
        return f;
    }
    Four c0 = load(cell[0]), c1 = load(cell[1]), c2 = load(cell[2]), c3 = load(cell[3]);
    transpose(c0, c1, c2, c3);
    Four over = load(cell[0] + 4), work = load(cell[1] + 4), width = load(cell[2] + 4),
         spare = load(cell[3] + 4);
    transpose(over, work, width, spare);
    const Four floor = each<Four>([](Part x) { return (Part)((Bits)x & leading); }, v);
    const Four u = (v - floor) * over;
    f.stress = c0 + u * (c1 + u * (c2 + u * c3));
    f.slope = (c1 + u * (2.0 * c2 + 3.0 * u * c3)) * over;
    f.work = work + width * u * (c0 + u * (c1 * 0.5 + u * (c2 * (1.0 / 3.0) + u * c3 * 0.25)));
    return f;
}

struct FourResponse {
    Four stress, shear_stress, tangent, cross_tangent, shear_tangent, energy;
    bool flows;  // one of them
};

// The layers whose rows begin at `rows`, a row each `stride`, at hoop strain e and the increment g of shear
// strain. The rows of the last answer are a guess, and are replaced.
template <int backs>
OVERBEND_INLINE FourResponse respond(const LaneLaw& law, double* rows, int stride, Four e, Four g) {
    constexpr double root_half = 0.70710678118654752, yield_c = 3.0, enough = 1e-11, on_surface = 1e-9;
    const auto row = [&](int r) { return rows + r * stride; };
    const double ya = law.yield_a, yb = law.yield_b;
    const Four left = load(row(start_left));
    const Four Ma = left * law.modulus_a, Mb = left * law.modulus_b, Mc = left * law.shear_modulus;
    const Four a_e = root_half * Ma, b_e = root_half * Mb;
    const Four a = load(row(start_a)) + a_e * e, b = load(row(start_b)) + b_e * e;
    const Four c = load(row(start_c)) + Mc * g;
    Four xi_a = a, xi_b = b, xi_c = c;
    if (backs > 0)
        xi_a -= load(row(start_back_a)), xi_b -= load(row(start_back_b)), xi_c -= load(row(start_back_c));
    const Mask plastic = ya * xi_a * xi_a + yb * xi_b * xi_b + yield_c * xi_c * xi_c >
                         load(row(start_yield_square)) * (1.0 + on_surface);

    FourResponse r;
    r.flows = any(plastic);
    Four new_a = a, new_b = b, new_c = c, more = all(0.0);
    r.tangent = left * law.modulus, r.cross_tangent = more, r.shear_tangent = Mc;
    const Four before_e = load(row(hoop_strain)), before_g = load(row(shear_strain));
    store(row(hoop_strain), e), store(row(shear_strain), g);
    if (!r.flows) {
        store(row(flow), all(0.0)), store(row(flow_hoop), all(0.0)), store(row(flow_shear), all(0.0));
    } else {
        const Four accumulated = load(row(start_accumulated)), close = enough * load(row(start_yield));
        Four d =
            load(row(flow)) + load(row(flow_hoop)) * (e - before_e) + load(row(flow_shear)) * (g - before_g);
        d = larger(d, all(0.0));
        FlowFour now;
        Four dp, dp_d, Da, Db, Dc, xi_a_d, xi_b_d, xi_c_d, q, slope, fade[2];  // dp: d over the flow stress
        for (int i = 0; i < 60; ++i) {
            now = curve_at(law, accumulated + d);
            const Four over = 1.0 / now.stress;
            dp = d * over;
            dp_d = (1.0 - dp * now.slope) * over;
            Four X_a = all(0.0), X_b = X_a, X_c = X_a, X_a_d = X_a, X_b_d = X_a, X_c_d = X_a, C = X_a,
                 C_d = X_a;
            for (int m = 0; m < backs; ++m) {
                fade[m] = 1.0 / (1.0 + law.gamma[m] * d);
                const Four fade_d = -law.gamma[m] * (fade[m] * fade[m]);
                const Four of_a = load(row(start_backs + 3 * m)), of_b = load(row(start_backs + 3 * m + 1));
                const Four of_c = load(row(start_backs + 3 * m + 2));
                X_a += of_a * fade[m], X_a_d += of_a * fade_d;
                X_b += of_b * fade[m], X_b_d += of_b * fade_d;
                X_c += of_c * fade[m], X_c_d += of_c * fade_d;
                C += law.C[m] * fade[m], C_d += law.C[m] * fade_d;
            }
            const Four stiff_a = Ma * ya + C, stiff_b = Mb * yb + C, stiff_c = Mc * yield_c + C;
            Da = 1.0 / (1.0 + dp * stiff_a), Db = 1.0 / (1.0 + dp * stiff_b), Dc = 1.0 / (1.0 + dp * stiff_c);
            xi_a = (a - X_a) * Da, xi_b = (b - X_b) * Db, xi_c = (c - X_c) * Dc;
            xi_a_d = -((X_a_d + xi_a * (dp_d * stiff_a + C_d * dp)) * Da);
            xi_b_d = -((X_b_d + xi_b * (dp_d * stiff_b + C_d * dp)) * Db);
            xi_c_d = -((X_c_d + xi_c * (dp_d * stiff_c + C_d * dp)) * Dc);
            const Four ya_xi = ya * xi_a, yb_xi = yb * xi_b, yc_xi = yield_c * xi_c;
            // Layers without any stress, which do not flow, must not be divided by it.
            q = larger(root(ya_xi * xi_a + yb_xi * xi_b + yc_xi * xi_c), all(1e-300));
            slope = (ya_xi * xi_a_d + yb_xi * xi_b_d + yc_xi * xi_c_d) / q - now.slope;
            const Four value = q - now.stress;
            const Mask open = plastic & ~(size(value) <= close);
            if (!any(open)) break;
            d = pick(open, larger(d - value / slope, all(0.0)), d);
        }
        const Four fa = ya * dp * xi_a, fb = yb * dp * xi_b, fc = yield_c * dp * xi_c;
        const Four over = -1.0 / (q * slope);
        const Four d_e = (ya * xi_a * a_e * Da + yb * xi_b * b_e * Db) * over;
        const Four d_g = yield_c * xi_c * Mc * Dc * over;
        const Four xi_a_e = a_e * Da + xi_a_d * d_e, xi_b_e = b_e * Db + xi_b_d * d_e;
        const Four new_a_e = a_e - Ma * ya * (dp_d * d_e * xi_a + dp * xi_a_e);
        const Four new_b_e = b_e - Mb * yb * (dp_d * d_e * xi_b + dp * xi_b_e);
        const Four flow_c_d = yield_c * (dp_d * xi_c + dp * xi_c_d);
        r.tangent = pick(plastic, root_half * (new_a_e + new_b_e), r.tangent);
        r.cross_tangent = pick(plastic, -Mc * flow_c_d * d_e, r.cross_tangent);
        r.shear_tangent = pick(plastic, Mc - Mc * (yield_c * dp * Mc * Dc + flow_c_d * d_g), r.shear_tangent);
        Four stored = now.work - load(row(start_work));
        for (int m = 0; m < backs; ++m)
            stored += (load(row(start_backs + 3 * m)) * fa + load(row(start_backs + 3 * m + 1)) * fb +
                       load(row(start_backs + 3 * m + 2)) * fc +
                       0.5 * law.C[m] * dp * (xi_a * fa + xi_b * fb + xi_c * fc)) *
                      fade[m];
        const Four none = all(0.0);
        more = pick(plastic, stored, none);
        new_a = pick(plastic, a - Ma * fa, a), new_b = pick(plastic, b - Mb * fb, b);
        new_c = pick(plastic, c - Mc * fc, c);
        store(row(flow), pick(plastic, d, none));
        store(row(flow_hoop), pick(plastic, d_e, none)), store(row(flow_shear), pick(plastic, d_g, none));
        store(row(flow_a), pick(plastic, fa, none)), store(row(flow_b), pick(plastic, fb, none));
        store(row(flow_c), pick(plastic, fc, none));
    }
    r.stress = root_half * (new_a + new_b);
    r.shear_stress = new_c;
    store(row(hoop_stress), r.stress), store(row(width_stress), root_half * (new_a - new_b));
    store(row(shear_stress), new_c);
    r.energy = 0.5 * (new_a * new_a / Ma + new_b * new_b / Mb + new_c * new_c / Mc) + more;
    return r;
}

}  // namespace overbend::material::OVERBEND_LANES
