#include "sim/plan/tool_rules.h"

#include <algorithm>
#include <cmath>

#include "sim/errors.h"
#include "sim/material/pure_bending.h"
#include "sim/tool/signed_distance.h"
#include "sim/units.h"

namespace overbend::plan {

namespace {

using tool::Vec2;
constexpr double rounding_of_either = 1e-9;  // mm and rad
constexpr int angles = 90;                   // places in a stroke that are looked at

}  // namespace

// ---- the flange stays on its shoulder

double flange_needed(const FlangeOnDie& f) {
    const double outer = f.inside_radius + f.thickness;
    double most = 0.0;
    for (int i = 0; i <= angles; ++i) {
        const double lean = 0.5 * f.bend_angle * i / angles;
        const double to_shoulder =
            (0.5 * f.die_opening - (f.shoulder_radius + outer) * std::sin(lean)) / std::cos(lean);
        // Once nose and shoulders pinch the strip, it lies on the arcs and needs no more.
        if (to_shoulder < 0.0) break;
        most = std::max(most, to_shoulder + (f.inside_radius + 0.5 * f.thickness) * lean);
    }
    return most;
}

std::optional<Finding> slips_off(double from_line, const FlangeOnDie& f) {
    const double needed = flange_needed(f);
    if (from_line >= needed - rounding_of_either) return std::nullopt;
    return Finding{Severity::stops, Rule::flange_on_die, from_line, needed};
}

// ---- the angle can be reached

std::optional<Finding> does_not_go_in(const tool::VeePunch& punch, const tool::VeeFace& face,
                                      double thickness) {
    try {
        tool::check_pair(punch, face, thickness);
    } catch (const OutOfRange& error) {
        const bool wedge = punch.angle > face.angle;
        Finding f{Severity::stops, wedge ? Rule::nose_angle : Rule::nose_width};
        f.figure = wedge ? punch.angle / degree : 2.0 * (punch.nose_radius + thickness);
        f.limit = wedge ? face.angle / degree : face.die_opening;
        f.detail = error.name + ": " + error.wrong;
        return f;
    }
    return std::nullopt;
}

double loaded_angle(const material::Card& card, double thickness, double inside_radius, double bend_angle,
                    double hold) {
    constexpr int layers = 15;
    const double drawn = 2.0 / (2.0 * std::max(inside_radius, 0.05 * thickness) + thickness);
    const auto over = [&](double curvature) {
        return material::bend_in_pure_moment(card, thickness, {curvature}, layers, hold)[0].free_curvature -
               drawn;
    };
    const double sharpest = 1.88 / thickness;
    double low = drawn, high = drawn, over_low = over(low), over_high = over_low;
    for (double step = 0.05 * drawn; over_high < 0.0 && high < sharpest; step *= 2.0) {
        low = high, over_low = over_high;
        high = std::min(high + step, sharpest);
        over_high = over(high);
    }
    // Regula falsi; an end that stays is given half its weight (Illinois).
    for (int i = 0, stayed = 0; i < 40 && over_low < 0.0 && over_high > 0.0; ++i) {
        const double middle = high - over_high * (high - low) / (over_high - over_low);
        const double over_middle = over(middle);
        if (std::abs(over_middle) < 1e-7 * drawn) return bend_angle * middle / drawn;
        if (over_middle > 0.0) {
            high = middle, over_high = over_middle;
            if (stayed == 1) over_low *= 0.5;
            stayed = 1;
        } else {
            low = middle, over_low = over_middle;
            if (stayed == -1) over_high *= 0.5;
            stayed = -1;
        }
    }
    return bend_angle * high / drawn;
}

std::optional<Finding> angle_out_of_reach(double loaded, double largest, Loaded how) {
    if (loaded <= largest + rounding_of_either) return std::nullopt;
    return Finding{Severity::stops,
                   Rule::angle_of_tools,
                   loaded / degree,
                   largest / degree,
                   {how == Loaded::simulated ? 1.0 : 0.0}};
}

// ---- a flange beside the punch

namespace {

// How far along a ray from `from` the outline is first touched, to `longest` at most: by steps of the
// distance.
double free_way(const tool::ArcOutline& outline, const Vec2& from, const Vec2& along, double longest) {
    constexpr double touch = 1e-4, least_step = 1e-3;  // mm
    double way = 0.0;
    while (way < longest) {
        const double distance = tool::nearest(outline, from + way * along).distance;
        if (distance < touch) return way;
        way += std::max(distance, least_step);
    }
    return longest;
}

}  // namespace

double longest_return(const tool::ArcOutline& punch, double nose_radius, const ReturnFlange& f,
                      double longest) {
    double least = longest;
    for (int i = 1; i <= angles; ++i) {
        const double angle = f.bend_angle * i / angles, lean = 0.5 * angle;
        // The strip's upper surface: two lines that touch the nose; where they cross, the bend's inner
        // corner.
        const Vec2 corner(0.0, nose_radius * (1.0 - 1.0 / std::cos(lean)));
        const double cut = f.inside_radius * std::tan(lean);
        const double other_cut = f.other_radius * std::tan(0.5 * f.other_angle);
        const Vec2 out(std::cos(lean), std::sin(lean));
        const Vec2 back(std::cos(lean + f.other_angle), std::sin(lean + f.other_angle));
        const Vec2 begin = corner + (cut + f.base + other_cut) * out + other_cut * back;
        least = std::min(least, free_way(punch, begin, back, least));
    }
    return least;
}

std::optional<Finding> flange_hits_punch(const tool::ArcOutline& punch, double nose_radius,
                                         const ReturnFlange& f) {
    const double longest = longest_return(punch, nose_radius, f, f.flange);
    if (longest >= f.flange - rounding_of_either) return std::nullopt;
    return Finding{Severity::stops, Rule::return_flange, f.flange, longest, {f.base}};
}

}  // namespace overbend::plan
