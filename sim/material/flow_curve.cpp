#include "sim/material/flow_curve.h"

#include <algorithm>
#include <cmath>

namespace overbend::material {

namespace {

FlowPoint swift_point(double K, double e0, double n, double p) {
    const double stress = K * std::pow(e0 + p, n);
    FlowPoint f;
    f.stress = stress;
    f.slope = n * stress / (e0 + p);
    f.work = (stress * (e0 + p) - K * std::pow(e0, n + 1.0)) / (n + 1.0);
    return f;
}

FlowPoint voce_point(const Voce& law, double p) {
    const double fade = std::exp(-law.b * p);
    FlowPoint f;
    f.stress = law.Y + law.Q * (1.0 - fade);
    f.slope = law.Q * law.b * fade;
    f.work = law.Y * p + law.Q * (p - (1.0 - fade) / law.b);
    return f;
}

FlowPoint table_point(const Table& law, double p) {
    FlowPoint f;
    for (std::size_t i = 0; i < law.p.size(); ++i) {
        const bool last = i + 1 == law.p.size();
        const double slope = last ? 0.0 : (law.stress[i + 1] - law.stress[i]) / (law.p[i + 1] - law.p[i]);
        const double end = last ? p : std::min(p, law.p[i + 1]);
        const double run = end - law.p[i];
        f.stress = law.stress[i] + slope * run;
        f.slope = slope;
        f.work += run * (law.stress[i] + 0.5 * slope * run);
        if (last || p < law.p[i + 1]) break;
    }
    return f;
}

}  // namespace

FlowPoint flow_point(const Hardening& hardening, double youngs_modulus, double p) {
    if (const Swift* law = std::get_if<Swift>(&hardening)) return swift_point(law->K, law->e0, law->n, p);
    if (const Hollomon* law = std::get_if<Hollomon>(&hardening)) {
        // Yield where the elastic line meets the law: E e0 = K e0^n.
        const double e0 = std::pow(law->K / youngs_modulus, 1.0 / (1.0 - law->n));
        return swift_point(law->K, e0, law->n, p);
    }
    if (const Voce* law = std::get_if<Voce>(&hardening)) return voce_point(*law, p);
    if (const Linear* law = std::get_if<Linear>(&hardening))
        return {law->Y + law->H * p, law->H, p * (law->Y + 0.5 * law->H * p)};
    return table_point(std::get<Table>(hardening), p);
}

FlowCurve::FlowCurve(const Hardening& hardening, double youngs_modulus) {
    first_yield_ = flow_point(hardening, youngs_modulus, 0.0).stress;

    if (const Linear* law = std::get_if<Linear>(&hardening)) {
        knot_ = {0.0}, knot_stress_ = {law->Y}, knot_slope_ = {law->H}, knot_work_ = {0.0};
        return;
    }
    if (const Table* law = std::get_if<Table>(&hardening)) {
        for (const double p : law->p) {
            const FlowPoint f = table_point(*law, p);
            knot_.push_back(p);
            knot_stress_.push_back(f.stress), knot_slope_.push_back(f.slope), knot_work_.push_back(f.work);
        }
        return;
    }

    // Cells from p = 0 to 16; the first one starts a little below p = 0, where the law is extended straight.
    smooth_ = true;
    base_ = bits_of(shift) >> cell_bits;
    const std::uint64_t end = bits_of(16.0) >> cell_bits;
    const auto stress_at = [&](double v) {
        const double p = v - shift;
        if (p >= 0.0) return flow_point(hardening, youngs_modulus, p);
        FlowPoint f = flow_point(hardening, youngs_modulus, 0.0);
        f.stress += p * f.slope;
        return f;
    };
    double work = 0.0;
    for (std::uint64_t b = base_; b < end; ++b) {
        const std::uint64_t low_bits = b << cell_bits, high_bits = (b + 1) << cell_bits;
        double low = 0.0, high = 0.0;
        std::memcpy(&low, &low_bits, sizeof low);
        std::memcpy(&high, &high_bits, sizeof high);
        const FlowPoint f0 = stress_at(low), f1 = stress_at(high);
        Cubic c;
        c.width = high - low, c.over = 1.0 / c.width;
        const double d0 = f0.slope * c.width, d1 = f1.slope * c.width;
        c.c0 = f0.stress;
        c.c1 = d0;
        c.c2 = 3.0 * (f1.stress - f0.stress) - 2.0 * d0 - d1;
        c.c3 = 2.0 * (f0.stress - f1.stress) + d0 + d1;
        c.work = work;
        work += c.width * (c.c0 + c.c1 / 2.0 + c.c2 / 3.0 + c.c3 / 4.0);
        cells_.push_back(c);
    }
    const double below = cubic_at(0.0).work;  // so that the work is 0 at p = 0
    for (Cubic& c : cells_) c.work -= below;
    last_p_ = 16.0 - shift;
    last_ = cubic_at(last_p_ * (1.0 - 1e-12));
}

FlowPoint FlowCurve::straight_at(double p) const {
    std::size_t i = knot_.size() - 1;
    while (i > 0 && knot_[i] > p) --i;
    const double run = p - knot_[i];
    return {knot_stress_[i] + knot_slope_[i] * run, knot_slope_[i],
            knot_work_[i] + run * (knot_stress_[i] + 0.5 * knot_slope_[i] * run)};
}

FlowPoint FlowCurve::beyond(double p) const {
    const double run = p - last_p_;
    return {last_.stress + last_.slope * run, last_.slope,
            last_.work + run * (last_.stress + 0.5 * last_.slope * run)};
}

}  // namespace overbend::material
