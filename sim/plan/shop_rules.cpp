#include "sim/plan/shop_rules.h"

#include <algorithm>
#include <cmath>

#include "sim/material/pure_bending.h"
#include "sim/words.h"

namespace overbend::plan {

namespace {

constexpr double rounding = 1e-9;  // mm, of figures that are meant to be equal

}  // namespace

std::optional<RuleFinding> too_sharp(double inside_radius, const LeastRadius& least) {
    if (inside_radius >= least.radius - rounding) return std::nullopt;
    RuleFinding f;
    f.rule = "least inside radius";
    f.figure = inside_radius, f.limit = least.radius, f.unit = "mm";
    f.words = words("inside radius %.2f mm is less than the %.2f mm in the table (%s): the bend may crack",
                    inside_radius, least.radius, least.row.c_str());
    f.source = least.source;
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

std::optional<RuleFinding> overstrained(double outer_log_strain, double elongation, StrainOf of) {
    const double stretched = std::exp(outer_log_strain) - 1.0;
    if (elongation <= 0.0 || stretched <= elongation) return std::nullopt;
    RuleFinding f;
    f.rule = "outer-fibre strain";
    f.figure = 100.0 * stretched, f.limit = 100.0 * elongation, f.unit = "%";
    f.words = words(
        "%s the outer fibre is stretched by %.0f per cent, more than the card's elongation of %.0f",
        of == StrainOf::drawing ? "at the drawing's radius" : "in the simulated bend", f.figure, f.limit);
    f.source = "the condition behind Kalpakjian and Schmid's least radius, with the elongation";
    return f;
}

double least_hole_distance(double inside_radius, double thickness) {
    return inside_radius + 1.5 * thickness;
}

std::optional<RuleFinding> too_near(double edge_to_bend, double inside_radius, double thickness) {
    const double least = least_hole_distance(inside_radius, thickness);
    if (edge_to_bend >= least - rounding) return std::nullopt;
    RuleFinding f;
    f.rule = "hole to bend";
    f.figure = edge_to_bend, f.limit = least, f.unit = "mm";
    f.words = edge_to_bend < 0.0
                  ? words("its edge reaches %.2f mm into the bend; keep it %.2f mm (r + 1.5 s) away",
                          -edge_to_bend, least)
                  : words("its edge is %.2f mm from where the bend begins, less than %.2f mm (r + 1.5 s)",
                          edge_to_bend, least);
    f.source = "design guideline, lecture text in a public repository";
    return f;
}

double usual_opening(double thickness) {
    if (thickness <= 2.5) return 6.0 * thickness;
    if (thickness <= 8.0) return 8.0 * thickness;
    return (thickness <= 10.0 ? 10.0 : 12.0) * thickness;
}

std::optional<RuleFinding> odd_opening(double die_opening, double thickness) {
    const double usual = usual_opening(thickness), low = 2.0 / 3.0 * usual, high = 2.0 * usual;
    const bool narrow = die_opening<low - rounding, wide = die_opening> high + rounding;
    if (!narrow && !wide) return std::nullopt;
    RuleFinding f;
    f.rule = "die opening";
    f.figure = die_opening, f.limit = narrow ? low : high, f.unit = "mm";
    f.words =
        words("a die opening of %.1f mm is far from the %.1f mm usual for this thickness (%.1f to %.1f): %s",
              die_opening, usual, low, high,
              narrow ? "the force is high, and the shoulders mark the strip"
                     : "flanges must be long, and springback varies");
    f.source = "common practice; the band is overbend's";
    return f;
}

std::optional<RuleFinding> short_flange(double outside_leg, double die_opening) {
    const double least = 0.7 * die_opening;
    if (outside_leg >= least - rounding) return std::nullopt;
    RuleFinding f;
    f.rule = "least flange";
    f.figure = outside_leg, f.limit = least, f.unit = "mm";
    f.words =
        words("a leg of %.2f mm (outside) is less than 0.7 of the die opening, %.2f mm", outside_leg, least);
    f.source = "common practice, from memory";
    return f;
}

}  // namespace overbend::plan
