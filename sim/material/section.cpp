#include "sim/material/section.h"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <string>

#include "sim/errors.h"

namespace overbend::material {

// Golub & Welsch: the points are the eigenvalues of the Legendre polynomials' Jacobi matrix, the weights
// twice the squares of the eigenvectors' first entries.
Layers gauss_layers(double thickness, int count) {
    if (count < 3 || count > 64) throw OutOfRange("layers", std::to_string(count), "give 3 to 64");
    Eigen::MatrixXd jacobi = Eigen::MatrixXd::Zero(count, count);
    for (int i = 1; i < count; ++i) jacobi(i, i - 1) = jacobi(i - 1, i) = i / std::sqrt(4.0 * i * i - 1.0);
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(jacobi);

    Layers layers;
    for (int i = 0; i < count; ++i) {
        // Made exactly odd and even about the middle, so that a strip turned over is the same strip.
        const int j = count - 1 - i;
        const double point = 0.5 * (solver.eigenvalues()(i) - solver.eigenvalues()(j));
        const double a = solver.eigenvectors()(0, i), b = solver.eigenvectors()(0, j);
        layers.height.push_back(0.5 * thickness * point);
        layers.weight.push_back(0.5 * thickness * (a * a + b * b));
    }
    return layers;
}

namespace {

// Layer starts and flows of one section, on the stack.
struct Working {
    LayerStart start[64];
    double flow[64] = {};
    Working(const LayerLaw& law, int count, const LayerHistory* was) {
        for (int i = 0; i < count; ++i) start[i] = start_of(law, was[i]);
    }
};

}  // namespace

SectionResponse respond(const LayerLaw& law, const double* heights, const double* weights, int count,
                        const LayerStart* was, double* flow, double G, double k) {
    SectionResponse s;
    const double edge = std::abs(2.0 * heights[0] * k);  // the outermost layer
    if (!(G > 0.0) || !(G * G - edge > 1e-3 * G * G)) {
        s.folded = true;
        return s;
    }
    double force = 0.0, moment = 0.0, N_G = 0.0, N_k = 0.0, M_k = 0.0, energy = 0.0, active = 0.0;
    for (int i = 0; i < count; ++i) {
        const double z = heights[i];
        const double square = G * G - 2.0 * z * k;
        const double e = 0.5 * std::log(square);
        const LayerResponse r = respond(law, was[i], e, 0.0, flow[i]);
        flow[i] = r.flow;
        const double w = weights[i] / square;
        const double c = w / square * (r.tangent - 2.0 * r.stress);
        force += w * r.stress;
        moment -= w * r.stress * z;
        N_G += c;
        N_k -= c * z;
        M_k += c * z * z;
        energy += weights[i] * r.energy;
        if (r.flow > 0.0 || was[i].accumulated > 0.0) active += std::abs(w * r.stress * z);
    }
    s.N = G * force;
    s.M = moment;
    s.N_G = G * G * N_G + force;
    s.N_k = G * N_k;
    s.M_k = M_k;
    s.energy = energy;
    s.active = active;
    return s;
}

SectionResponse respond(const LayerLaw& law, const double* heights, const double* weights, int count,
                        const LayerHistory* was, double G, double k) {
    Working now(law, count, was);
    return respond(law, heights, weights, count, now.start, now.flow, G, k);
}

double advance(const LayerLaw& law, const double* heights, const double* weights, int count,
               const LayerStart* start, const double* flow, LayerHistory* history, double* stress,
               double* width_stress, double G, double k) {
    double work = 0.0;
    for (int i = 0; i < count; ++i) {
        const double e = 0.5 * std::log(G * G - 2.0 * heights[i] * k);
        const LayerResponse r = respond(law, start[i], e, 0.0, flow[i]);
        const LayerHistory was = history[i];
        history[i] = advance(law, was, r);
        work += weights[i] * plastic_work(law, was, stress[i], width_stress[i], r, history[i]);
        stress[i] = r.stress;
        width_stress[i] = r.width_stress;
    }
    return work;
}

double advance(const LayerLaw& law, const double* heights, const double* weights, int count,
               LayerHistory* history, double* stress, double* width_stress, double G, double k) {
    const Working now(law, count, history);
    return advance(law, heights, weights, count, now.start, now.flow, history, stress, width_stress, G, k);
}

double elastic_energy(const LayerLaw& law, const double* weights, int count, const LayerHistory* history,
                      const double* stress, const double* width_stress) {
    double energy = 0.0;
    for (int i = 0; i < count; ++i)
        energy += weights[i] * elastic_energy(law, history[i].accumulated, stress[i], width_stress[i],
                                              history[i].shear_stress);
    return energy;
}

FreeSection release(const LayerLaw& law, const double* heights, const double* weights, int count,
                    const LayerHistory* was, double G, double k) {
    // Newton on (N, M) = 0, halved while the potential rises: the same energy as the increment's.
    const double t = heights[count - 1] - heights[0];
    const double enough = 1e-9 * law.plane_strain_yield() * t;
    FreeSection f;
    f.G = G, f.k = k;
    Working now(law, count, was);
    SectionResponse s = respond(law, heights, weights, count, now.start, now.flow, f.G, f.k);
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
        SectionResponse next;
        for (int trial = 0; trial < 30; ++trial) {
            next =
                respond(law, heights, weights, count, now.start, now.flow, f.G + step * dG, f.k + step * dk);
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
