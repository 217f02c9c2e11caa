#include "scenes/job/run/profile.h"

#include <algorithm>
#include <cmath>

#include "scenes/job/run/bent_strip.h"
#include "sim/material/section_shape.h"
#include "sim/strip/place.h"
#include "sim/stroke/recorded_section.h"

namespace overbend::job {

namespace {

// Mean strains of the sections over [from, to] of the blank.
material::SectionStrain mean_section(const stroke::Recording& r, const stroke::State& s, double from,
                                     double to) {
    double length = 0.0;
    material::SectionStrain sum = material::SectionStrain::Zero();
    for (std::size_t e = 0; e + 1 < r.blank_position.size(); ++e) {
        const double low = std::min(r.blank_position[e], r.blank_position[e + 1]);
        const double high = std::max(r.blank_position[e], r.blank_position[e + 1]);
        const double inside = std::min(high, to) - std::max(low, from);
        if (inside <= 0.0) continue;
        length += inside, sum += inside * stroke::section_of(r, s, static_cast<int>(e));
    }
    if (length <= 0.0) return {1.0, 0.0, 0.0, 0.0};
    return sum / length;
}

}  // namespace

BendShape bend_shape(const stroke::Recording& r, const stroke::State& s, double a, double b) {
    BendShape shape;
    shape.angle = strip::turn_between(r.blank_position, s.theta, a, b);
    shape.thickness = r.thickness;
    const double low = std::min(a, b), high = std::max(a, b), window = 0.5 * r.thickness;
    shape.inside_radius = inside_radius(bent_strip(r, s), low, high, r.thickness);

    material::SectionStrain sharpest(1.0, 0.0, 0.0, 0.0);
    constexpr int places = 400;
    for (int i = 0; i <= places; ++i) {
        const double at = low + (high - low) * i / places;
        const material::SectionStrain m = mean_section(r, s, at - 0.5 * window, at + 0.5 * window);
        if (std::abs(m(1)) > std::abs(sharpest(1))) sharpest = m;
    }
    const double k = std::abs(sharpest(1));
    const material::SectionShape section(r.thickness, {});
    material::LayerHeights height;
    if (k * r.thickness < 1e-6 || !section.heights(sharpest, height)) return shape;
    const double outer_side = sharpest(1) > 0.0 ? -1.0 : 1.0;
    shape.sharpest_radius = std::sqrt(section.face_square(sharpest, -outer_side)) / k;
    shape.thickness = height.y(section.face(1.0)) - height.y(section.face(-1.0));
    shape.outer_strain = 0.5 * std::log(section.face_square(sharpest, outer_side));
    return shape;
}

}  // namespace overbend::job
