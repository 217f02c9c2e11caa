#include "sim/plan/springback.h"

#include <algorithm>

#include "sim/material/pure_bending.h"

namespace overbend::plan {

double springback_curvature(const material::Card& card, double hold, double thickness, double inside_radius) {
    constexpr int layers = 21;
    constexpr double sharpest = 1.8;  // times 1 / thickness: sharper, the section folds
    const double radius = inside_radius + 0.5 * thickness;
    const double curvature = std::min(1.0 / radius, sharpest / thickness);
    const material::BendingPoint bent =
        material::bend_in_pure_moment(card, thickness, {curvature}, layers, hold).front();
    return bent.curvature - bent.free_curvature;
}

}  // namespace overbend::plan
