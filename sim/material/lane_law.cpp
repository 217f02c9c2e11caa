#include "sim/material/lane_law.h"

#include "sim/material/layer_law.h"

namespace overbend::material {

namespace {

void curve_at(const void* curve, double p, double* point) {
    const FlowPoint f = static_cast<const FlowCurve*>(curve)->at(p);
    point[0] = f.stress, point[1] = f.slope, point[2] = f.work;
}

}  // namespace

LaneLaw lane_law(const LayerLaw& law) {
    LaneLaw l;
    l.modulus = law.modulus, l.shear_modulus = law.shear_modulus;
    l.modulus_a = law.modulus_a, l.modulus_b = law.modulus_b;
    l.yield_a = law.yield_a, l.yield_b = law.yield_b;
    l.backstresses = law.backstresses;
    for (int i = 0; i < law.backstresses; ++i) l.C[i] = law.C[i], l.gamma[i] = law.gamma[i];
    static_assert(sizeof(FlowCurve::Cubic) == 8 * sizeof(double));
    l.cells = law.curve.cells().empty() ? nullptr : &law.curve.cells().front().c0;
    l.first_cell = static_cast<long long>(law.curve.first_cell());
    l.cells_used = static_cast<long long>(law.curve.cells().size());
    l.shift = FlowCurve::shift;
    l.curve = &law.curve, l.curve_at = curve_at;
    return l;
}

void store_start(const LayerLaw& law, const LayerStart& s, double* rows, int stride) {
    const auto keep = [&](int row, double x) { rows[row * stride] = x; };
    keep(start_a, s.a), keep(start_b, s.b), keep(start_c, s.c);
    keep(start_left, s.left);
    keep(start_back_a, s.back_a), keep(start_back_b, s.back_b), keep(start_back_c, s.back_c);
    for (int m = 0; m < law.backstresses; ++m) {
        keep(start_backs + 3 * m, s.backs_a[m]), keep(start_backs + 3 * m + 1, s.backs_b[m]);
        keep(start_backs + 3 * m + 2, s.backs_c[m]);
    }
    keep(start_accumulated, s.accumulated);
    keep(start_yield, s.yield), keep(start_yield_square, s.yield_square);
    keep(start_work, s.work);
}

}  // namespace overbend::material
