#include "sim/plan/shop_rules.h"

#include <algorithm>
#include <cmath>

#include "sim/material/pure_bending.h"

namespace overbend::plan {

namespace {

constexpr double rounding = 1e-9;  // mm, of figures that are meant to be equal

}  // namespace

double allowed_radius(const LeastRadius& least) {
    constexpr double share = 0.15, amount = 0.2;  // mm
    constexpr double most = 0.4;  // of it: half of a table's radius is too sharp, however small it is
    return least.radius - std::min(std::max(amount, share * least.radius), most * least.radius);
}

std::optional<Finding> too_sharp(double inside_radius, const LeastRadius& least) {
    if (inside_radius >= allowed_radius(least) - rounding) return std::nullopt;
    Finding f{Severity::caution, Rule::least_inside_radius, inside_radius, least.radius};
    f.detail = least.row, f.source = least.source;
    return f;
}

double outer_strain(const material::Card& card, double thickness, double inside_radius, double hold) {
    const double radius = std::max(inside_radius, 0.05 * thickness);
    constexpr int layers = 15;
    // The strip thins as it is bent, and its outer radius with it: a second round settles that.
    double outer = radius + thickness;
    material::BendingPoint point;
    for (int i = 0; i < 2; ++i) {
        const double curvature = std::min(2.0 / (radius + outer), 1.88 / thickness);  // or it folds
        point = material::bend_in_pure_moment(card, thickness, {curvature}, layers, hold)[0];
        outer = radius + point.thickness;
    }
    return point.outer_log_strain;
}

std::optional<StrainLimit> strain_limit(const material::Card& card, double thickness, double hold,
                                        const std::optional<LeastRadius>& least) {
    const double area = card.reduction_of_area;
    if (area > 0.0) return StrainLimit{area / (1.0 - area), true};
    if (!least) return std::nullopt;
    return StrainLimit{std::exp(outer_strain(card, thickness, allowed_radius(*least), hold)) - 1.0, false};
}

std::optional<Finding> overstrained(double outer_log_strain, const StrainLimit& limit) {
    const double stretched = std::exp(outer_log_strain) - 1.0;
    const bool stops = stretched > 2.0 * limit.strain;
    if (!stops && (!limit.by_area || stretched <= limit.strain)) return std::nullopt;
    return Finding{stops ? Severity::stops : Severity::caution,
                   Rule::outer_fibre_strain,
                   100.0 * stretched,
                   100.0 * limit.strain,
                   {limit.by_area ? 1.0 : 0.0}};
}

namespace {

// Thicknesses beside the radius that are left between a cut-out and a bend.
double beside_radius(double side_along) {
    if (side_along <= rounding) return 1.5;
    if (side_along <= 25.0 + rounding) return 2.0;
    return side_along <= 50.0 + rounding ? 2.5 : 3.0;
}

}  // namespace

double least_hole_distance(double inside_radius, double thickness, double side_along) {
    return inside_radius + beside_radius(side_along) * thickness;
}

std::optional<Finding> too_near(double edge_to_bend, double inside_radius, double thickness,
                                double side_along) {
    const double least = least_hole_distance(inside_radius, thickness, side_along);
    if (edge_to_bend >= least - rounding) return std::nullopt;
    return Finding{Severity::caution, Rule::hole_to_bend, edge_to_bend, least, {beside_radius(side_along)}};
}

std::optional<Finding> thin_web(double web, BlankEdge edge, double thickness) {
    if (web >= thickness - rounding) return std::nullopt;
    const Severity severity = web < -rounding ? Severity::stops : Severity::caution;
    return Finding{severity, Rule::web_to_edge, web, thickness, {edge == BlankEdge::end ? 1.0 : 0.0}};
}

std::optional<Finding> small_hole(double diameter, double thickness) {
    if (diameter >= thickness - rounding) return std::nullopt;
    const double by_laser = 0.5 * thickness;
    return Finding{diameter < by_laser - rounding ? Severity::caution : Severity::note,
                   Rule::least_hole,
                   diameter,
                   thickness,
                   {by_laser}};
}

double usual_opening(double thickness) {
    if (thickness <= 2.5) return 6.0 * thickness;
    if (thickness <= 8.0) return 8.0 * thickness;
    return (thickness <= 10.0 ? 10.0 : 12.0) * thickness;
}

std::optional<Finding> odd_opening(double die_opening, double thickness) {
    const double usual = usual_opening(thickness), low = 2.0 / 3.0 * usual, high = 2.0 * usual;
    const bool narrow = die_opening<low - rounding, wide = die_opening> high + rounding;
    if (!narrow && !wide) return std::nullopt;
    return Finding{
        Severity::caution, Rule::die_opening, die_opening, narrow ? low : high, {usual, low, high}};
}

std::optional<Finding> short_flange(double outside_leg, double die_opening) {
    const double least = 0.7 * die_opening;
    if (outside_leg >= least - rounding) return std::nullopt;
    return Finding{Severity::caution, Rule::least_flange, outside_leg, least};
}

}  // namespace overbend::plan
