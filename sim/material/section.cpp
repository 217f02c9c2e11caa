#include "sim/material/section.h"

#include <algorithm>
#include <cmath>

#include "sim/material/section_law_kernels.h"

namespace overbend::material {

namespace {

double elastic_of(const LayerLaw& law, const LayerHistory& h, double stress, double width_stress) {
    return elastic_energy(law, h.accumulated, stress, width_stress, h.shear_stress);
}

}  // namespace

SectionResponse respond(const LayerLaw& law, const SectionShape& shape, const LayerHistory* was,
                        const SectionStrain& E) {
    SectionResponse s;
    LayerSquare squares[most_layers];
    s.folded = !shape.squares(E, squares);
    if (s.folded) return s;
    SquareCurvature curve[most_layers];
    shape.curvatures(E, curve);
    for (int i = 0; i < shape.layers(); ++i) {
        const LayerSquare& q = squares[i];
        const LayerResponse r = respond(law, was[i], 0.5 * std::log(q.value));
        const double w = 0.5 * shape.weight(i) / q.value, stress = w * r.stress;
        const double c = 0.5 * w / q.value * (r.tangent - 2.0 * r.stress);
        s.N += stress * q.by(0);
        s.M += stress * q.by(1);
        s.N_G += c * q.by(0) * q.by(0) + stress * curve[i].GG;
        s.N_k += c * q.by(0) * q.by(1) + stress * curve[i].Gk;
        s.M_k += c * q.by(1) * q.by(1) + stress * curve[i].kk;
        s.energy += shape.weight(i) * r.energy;
    }
    return s;
}

double advance(const LayerLaw& law, const SectionShape& shape, LayerHistory* history, double* stress,
               double* width_stress, const SectionStrain& E) {
    LayerSquare squares[most_layers];
    shape.squares(E, squares);
    double work = 0.0;
    for (int i = 0; i < shape.layers(); ++i) {
        const LayerHistory was = history[i];
        const LayerResponse r = respond(law, was, 0.5 * std::log(squares[i].value));
        history[i] = advance(law, was, r);
        work += shape.weight(i) * plastic_work(law, was, stress[i], width_stress[i], r, history[i]);
        stress[i] = r.stress;
        width_stress[i] = r.width_stress;
    }
    return work;
}

double elastic_energy(const LayerLaw& law, const SectionShape& shape, const LayerHistory* history,
                      const double* stress, const double* width_stress) {
    double energy = 0.0;
    for (int i = 0; i < shape.layers(); ++i)
        energy += shape.weight(i) * elastic_of(law, history[i], stress[i], width_stress[i]);
    return energy;
}

FreeSection release(const LayerLaw& law, const SectionShape& shape, const LayerHistory* was,
                    const SectionStrain& E, const double* slope_square) {
    const int n = shape.padded_layers();
    double rows[law_rows * most_layers], none[most_layers] = {};
    for (int i = 0; i < n; ++i) {
        store_start(law, start_of(law, was[std::min(i, shape.layers() - 1)]), rows + i, n);
        for (const LayerRow row : {hoop_strain, shear_strain, flow, flow_hoop, flow_shear})
            rows[row * n + i] = 0.0;
    }
    const SectionLayers layers{shape.heights(), shape.weights(), n, rows, slope_square ? slope_square : none};
    const LaneLaw of_lanes = lane_law(law);
    const auto at = [&](double G, double k) {
        SectionSums s;
        s.folded = !(G > 0.0);
        if (!s.folded) section_law(of_lanes, layers, shape.held(SectionStrain(G, k, E(2), E(3))), s);
        return s;
    };
    // Newton on (N, M) = 0, halved while the potential rises: the same energy as the increment's.
    const double t = shape.height(shape.layers() - 1) - shape.height(0);
    const double enough = 1e-9 * law.plane_strain_yield() * t;
    FreeSection f;
    f.G = E(0), f.k = E(1);
    SectionSums s = at(f.G, f.k);
    for (int i = 0; i < 60 && !s.folded; ++i) {
        if (std::abs(s.N) < enough && std::abs(s.M) < enough * t) {
            f.solved = true;
            return f;
        }
        // A section that was yielding responds with low stiffness; unloading begins elastically.
        if (i == 0 || !(s.N_G * s.M_k > s.N_k * s.N_k)) {
            const double whole = law.modulus * t;
            s.N_G = whole, s.M_k = whole * t * t / 12.0, s.N_k = 0.0;
        }
        const double det = s.N_G * s.M_k - s.N_k * s.N_k;
        const double dG = -(s.M_k * s.N - s.N_k * s.M) / det;
        const double dk = -(s.N_G * s.M - s.N_k * s.N) / det;
        // Along the step to where the potential is least, or past half of the way there: a layer that has
        // just yielded responds with low stiffness at first, and with high stiffness as soon as it unloads.
        const double slope0 = s.N * dG + s.M * dk;
        double step = 1.0, low = 0.0, low_slope = slope0, high = 0.0, high_slope = 0.0;
        SectionSums next;
        for (int trial = 0; trial < 30; ++trial) {
            next = at(f.G + step * dG, f.k + step * dk);
            if (next.folded) {
                step = 0.5 * (low + step);
                continue;
            }
            const double slope = next.N * dG + next.M * dk;
            if (std::abs(slope) <= 0.5 * std::abs(slope0)) break;
            if (slope < 0.0) {
                low = step, low_slope = slope;
                if (high == 0.0) break;  // still going down at the whole step
            } else {
                high = step, high_slope = slope;
            }
            const double share = low_slope / (low_slope - high_slope);
            step = low + std::clamp(share, 0.1, 0.9) * (high - low);
        }
        f.G += step * dG;
        f.k += step * dk;
        s = next;
    }
    return f;
}

}  // namespace overbend::material
