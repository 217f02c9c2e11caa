#include "scenes/job/run/profile.h"

#include <algorithm>
#include <cmath>

#include "sim/strip/place.h"

namespace overbend::job {

namespace {

struct MeanSection {
    double G = 1.0, k = 0.0;
};

// Mean stretch and curvature over [from, to] of the blank.
MeanSection mean_section(const stroke::Recording& r, const stroke::State& s, double from, double to) {
    double length = 0.0, G = 0.0, k = 0.0;
    for (std::size_t e = 0; e + 1 < r.blank_position.size(); ++e) {
        const double low = std::min(r.blank_position[e], r.blank_position[e + 1]);
        const double high = std::max(r.blank_position[e], r.blank_position[e + 1]);
        const double inside = std::min(high, to) - std::max(low, from);
        if (inside <= 0.0) continue;
        length += inside, G += inside * s.stretch[e], k += inside * s.curvature[e];
    }
    if (length <= 0.0) return {};
    return {G / length, k / length};
}

}  // namespace

BendShape bend_shape(const stroke::Recording& r, const stroke::State& s, double a, double b) {
    BendShape shape;
    shape.angle = strip::turn_between(r.blank_position, s.theta, a, b);
    shape.thickness = r.thickness;
    const double low = std::min(a, b), high = std::max(a, b), window = 0.5 * r.thickness;

    MeanSection sharpest;
    constexpr int places = 400;
    for (int i = 0; i <= places; ++i) {
        const double at = low + (high - low) * i / places;
        const MeanSection m = mean_section(r, s, at - 0.5 * window, at + 0.5 * window);
        if (std::abs(m.k) > std::abs(sharpest.k)) sharpest = m;
    }
    if (std::abs(sharpest.k) * r.thickness < 1e-6) return shape;
    const double spread = r.thickness * std::abs(sharpest.k), square = sharpest.G * sharpest.G;
    const double inner = std::sqrt(std::max(1e-6, square - spread)), outer = std::sqrt(square + spread);
    shape.inside_radius = inner / std::abs(sharpest.k);
    shape.thickness = 2.0 * r.thickness / (inner + outer);
    shape.outer_strain = std::log(outer);
    return shape;
}

}  // namespace overbend::job
