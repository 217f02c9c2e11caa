#include "sim/material/pure_bending.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "sim/errors.h"
#include "sim/material/section.h"

namespace overbend::material {

namespace {

// The section that is bent, with its history.
struct Specimen {
    LayerLaw law;
    SectionShape shape;
    double half = 0.0;  // mm
    std::vector<LayerHistory> history;
    std::vector<double> stress, width_stress;
    double G = 1.0, k = 0.0;

    SectionResponse at(double G_, double k_) {
        return respond(law, shape, history.data(), SectionStrain(G_, k_, 0.0, 0.0));
    }
    void accept(double G_, double k_) {
        advance(law, shape, history.data(), stress.data(), width_stress.data(),
                SectionStrain(G_, k_, 0.0, 0.0));
        G = G_, k = k_;
    }
};

struct Surfaces {
    double lower = 1.0, upper = 1.0;  // stretches
};
Surfaces surfaces(double half, double G, double k) {
    return {std::sqrt(G * G + 2.0 * half * k), std::sqrt(G * G - 2.0 * half * k)};
}

// The strip's curvature as it is: the surfaces' radii are lambda / k, so their mean is (l + u) / (2 k).
double true_curvature(double half, double G, double k) {
    const Surfaces s = surfaces(half, G, k);
    return 2.0 * k / (s.lower + s.upper);
}
// And back: the reference curvature k that gives it at stretch G. Newton; true_curvature is nearly linear in
// k.
double reference_curvature(double half, double G, double curvature) {
    double k = curvature * G;
    for (int i = 0; i < 30; ++i) {
        const double limit = 0.999 * G * G / (2.0 * half);
        k = std::clamp(k, -limit, limit);
        const double h = 1e-7 / half;
        const double miss = true_curvature(half, G, k) - curvature;
        const double slope =
            (true_curvature(half, G, k + h * 1e-3) - true_curvature(half, G, k - h * 1e-3)) / (2e-3 * h);
        const double step = miss / slope;
        k -= step;
        if (std::abs(step) < 1e-13 / half) break;
    }
    return k;
}

// The stretch at which N = 0 for a given true curvature, by bisection kept inside a bracket and sped up by
// secants (the force rises with the stretch).
double balanced_stretch(Specimen& s, double curvature) {
    double low = std::max(0.2, s.G - 0.2), high = s.G + 0.2;
    const auto force = [&](double G) {
        const SectionResponse r = s.at(G, reference_curvature(s.half, G, curvature));
        return r.folded ? -1e300 : r.N;
    };
    double f_low = force(low), f_high = force(high);
    if (!(f_low < 0.0 && f_high > 0.0))
        throw NotSolved("pure bending: no stretch balances the axial force at curvature " +
                        std::to_string(curvature) + " per mm");
    int side = 0;
    double G = s.G;
    for (int i = 0; i < 200 && high - low > 1e-15; ++i) {
        G = f_low < -1e200 ? 0.5 * (low + high) : (low * f_high - high * f_low) / (f_high - f_low);
        const double f = force(G);
        if (f == 0.0 || std::abs(f) < 1e-12 * s.law.plane_strain_yield() * s.half) break;
        if (f < 0.0) {
            low = G, f_low = f;
            if (side == -1) f_high *= 0.5;
            side = -1;
        } else {
            high = G, f_high = f;
            if (side == 1) f_low *= 0.5;
            side = 1;
        }
    }
    return G;
}

void check_input(double thickness, const std::vector<double>& curvatures) {
    if (!(thickness > 0.0))
        throw OutOfRange("thickness", std::to_string(thickness) + " mm", "give more than 0");
    for (const double c : curvatures)
        if (!(std::abs(c) * thickness < 1.9))
            throw OutOfRange(
                "curvature", std::to_string(c) + " per mm folds the inner surface",
                "give less than 1.9 over the thickness, " + std::to_string(1.9 / thickness) + " per mm");
}

}  // namespace

std::vector<BendingPoint> bend_in_pure_moment(const Card& card, double thickness,
                                              const std::vector<double>& curvatures, int layers,
                                              double hold) {
    check(card);
    check_input(thickness, curvatures);
    Specimen s{LayerLaw(card, hold), SectionShape(gauss_layers(thickness, layers)), 0.0, {}, {}, {}};
    s.half = 0.5 * thickness;
    s.history.resize(layers);
    s.stress.assign(layers, 0.0);
    s.width_stress.assign(layers, 0.0);

    // Small steps, because the neutral layer moves and leaves a history of its own.
    constexpr double step = 0.004;  // of curvature times thickness
    std::vector<BendingPoint> points;
    double curvature = 0.0;
    for (const double goal : curvatures) {
        const int steps =
            std::max(1, static_cast<int>(std::ceil(std::abs(goal - curvature) * thickness / step)));
        const double from = curvature;
        for (int i = 1; i <= steps; ++i) {
            curvature = from + (goal - from) * i / steps;
            const double G = balanced_stretch(s, curvature);
            s.accept(G, reference_curvature(s.half, G, curvature));
        }
        curvature = goal;

        const SectionResponse loaded = s.at(s.G, s.k);
        const FreeSection free =
            release(s.law, s.shape, s.history.data(), SectionStrain(s.G, s.k, 0.0, 0.0), nullptr);
        if (!free.solved)
            throw NotSolved("pure bending: no free state from curvature " + std::to_string(goal) + " per mm");
        const Surfaces faces = surfaces(s.half, s.G, s.k);
        BendingPoint p;
        p.curvature = goal;
        p.moment = loaded.M;
        p.axial_force_residue = loaded.N;
        p.stretch = s.G;
        p.reference_curvature = s.k;
        p.stress = s.stress;
        for (const LayerHistory& h : s.history) p.plastic_strain.push_back(h.accumulated);
        p.free_curvature = true_curvature(s.half, free.G, free.k);
        p.thickness = 2.0 * thickness / (faces.lower + faces.upper);
        p.neutral_height = s.k == 0.0 ? 0.0 : (s.G * s.G - 1.0) / (2.0 * s.k);
        const bool upper_inside = s.k > 0.0;
        p.inner_log_strain = std::log(upper_inside ? faces.upper : faces.lower);
        p.outer_log_strain = std::log(upper_inside ? faces.lower : faces.upper);
        points.push_back(p);
    }
    return points;
}

}  // namespace overbend::material
