#include "sim/plan/tool_rules.h"

#include <algorithm>
#include <cmath>

#include "sim/errors.h"
#include "sim/material/pure_bending.h"
#include "sim/tool/signed_distance.h"
#include "sim/units.h"
#include "sim/words.h"

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

std::optional<RuleFinding> slips_off(double from_line, const FlangeOnDie& f) {
    const double needed = flange_needed(f);
    if (from_line >= needed - rounding_of_either) return std::nullopt;
    RuleFinding r;
    r.rule = "flange on the die";
    r.figure = from_line, r.limit = needed, r.unit = "mm";
    r.words = words(
        "%.2f mm of strip beside the bend line slips off the die's shoulder; at least %.2f mm is needed",
        from_line, needed);
    r.source = "geometry of the strip on the shoulder";
    r.stops = true;
    return r;
}

// ---- the angle can be reached

std::optional<RuleFinding> does_not_go_in(const tool::VeePunch& punch, const tool::VeeFace& face,
                                          double thickness) {
    try {
        tool::check_pair(punch, face, thickness);
    } catch (const OutOfRange& error) {
        RuleFinding f;
        f.rule = "nose in the groove";
        const bool wedge = punch.angle > face.angle;
        f.figure = wedge ? punch.angle / degree : 2.0 * (punch.nose_radius + thickness);
        f.limit = wedge ? face.angle / degree : face.die_opening;
        f.unit = wedge ? "deg" : "mm";
        f.words = std::string(error.name) + ": " + error.wrong;
        f.source = "geometry of the tools";
        f.stops = true;
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

std::optional<RuleFinding> angle_out_of_reach(double loaded, double largest, const char* how) {
    if (loaded <= largest + rounding_of_either) return std::nullopt;
    RuleFinding f;
    f.rule = "angle of the tools";
    f.figure = loaded / degree, f.limit = largest / degree, f.unit = "deg";
    f.words = words("with springback the bend needs %.1f degrees under load (%s); the tools reach %.1f",
                    f.figure, how, f.limit);
    f.source = "geometry of the tools; springback by the mechanics";
    f.stops = true;
    return f;
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

std::optional<RuleFinding> flange_hits_punch(const tool::ArcOutline& punch, double nose_radius,
                                             const ReturnFlange& f) {
    const double longest = longest_return(punch, nose_radius, f, f.flange);
    if (longest >= f.flange - rounding_of_either) return std::nullopt;
    RuleFinding r;
    r.rule = "return flange";
    r.figure = f.flange, r.limit = longest, r.unit = "mm";
    r.words = words("a return flange of %.2f mm, %.2f mm away, hits the punch; up to %.2f mm clears it",
                    f.flange, f.base, longest);
    r.source = "geometry of the punch";
    r.stops = true;
    return r;
}

}  // namespace overbend::plan
