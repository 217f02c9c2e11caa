// Springs behind pads and clamps: chosen for the force that a case gives, or looked at as the case has them.

#include <algorithm>
#include <cmath>

#include "scenes/job/shop/shop_parts.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

constexpr double least_travel = 1.0;    // mm that a spring is chosen for even where the job hardly moves it
constexpr double constant_rises = 1.2;  // a cushion of constant force may rise by so much over its travel
constexpr int counts[] = {1, 2, 3, 4, 6, 8};

const tool::Spring* spring_of(const files::Tool& tool) {
    if (const files::Pad* pad = std::get_if<files::Pad>(&tool.shape)) return &pad->spring;
    const files::Clamp* clamp = std::get_if<files::Clamp>(&tool.shape);
    return clamp && clamp->spring ? &*clamp->spring : nullptr;
}

const files::WoundSprings* wound_of(const files::Tool& tool) {
    if (const files::Pad* pad = std::get_if<files::Pad>(&tool.shape))
        return pad->wound ? &*pad->wound : nullptr;
    const files::Clamp* clamp = std::get_if<files::Clamp>(&tool.shape);
    return clamp && clamp->wound ? &*clamp->wound : nullptr;
}

double width_of(const files::Tool& tool) {
    if (const files::Pad* pad = std::get_if<files::Pad>(&tool.shape)) return pad->block.width;
    return std::get<files::Clamp>(tool.shape).block.width;
}

// The case's own wire is not named: it is looked at as the first of the list that is drawn so thick.
const shop::SpringWire& wire_for(double diameter) {
    for (const shop::SpringWire& wire : shop::spring_wires())
        if (diameter <= wire.most) return wire;
    return shop::spring_wires().back();
}

SpringAdvice as_given(const files::Tool& tool, const files::WoundSprings& wound, double travel,
                      std::vector<shop::Check>& checks) {
    const shop::SpringWire& wire = wire_for(wound.each.wire);
    SpringAdvice advice;
    advice.given = true, advice.count = wound.count, advice.travel = travel;
    const double end = wound.preload / wound.count + tool::spring_rate(wound.each) * travel;
    const shop::ChosenSpring& s = advice.each = shop::spring_at_work(wound.each, wire, end, travel);
    const char* const name = tool.name.c_str();
    checks.push_back({"spring", s.stress, s.allowed_stress, "MPa",
                      shop::judged(s.stress, s.allowed_stress, 1.0),
                      words("springs of '%s': shear stress %.0f MPa (with Wahl's factor); %.0f allowed "
                            "before %s of %g mm sets",
                            name, s.stress, s.allowed_stress, wire.name.c_str(), wound.each.wire),
                      "Shigley, chapter 10"});
    checks.push_back({"spring's slenderness", s.slenderness, shop::buckles_from, "",
                      shop::judged(s.slenderness, shop::buckles_from, 1.0),
                      words("springs of '%s': free length at least %.1f mm, %.2f times the coil diameter of "
                            "%g mm; from %.2f times they buckle unless a pin or a bore guides them",
                            name, s.free_length, s.slenderness, s.spring.coil_diameter, shop::buckles_from),
                      "Shigley, chapter 10"});
    const double outside = s.spring.coil_diameter + s.spring.wire, room = width_of(tool);
    checks.push_back({"spring's room", outside, room, "mm", shop::judged(outside, room, 1.0),
                      words("springs of '%s': %.1f mm across, in a block of %.1f mm", name, outside, room),
                      "by geometry"});
    return advice;
}

// The fewest that do it.
std::optional<SpringAdvice> chosen_for(const files::Case& c, const files::Tool& tool,
                                       const tool::Spring& spring, double travel) {
    const double start = spring.preload * c.width, end = start + spring.rate * travel * c.width;
    shop::SpringRequest request;
    request.travel = travel;
    request.most_outside = width_of(tool);
    for (const int count : counts) {
        request.force_start = start / count;
        request.force_end = std::max(end, start * (spring.rate > 0.0 ? 1.0 : constant_rises)) / count;
        if (!(request.force_end > request.force_start)) return std::nullopt;
        const std::optional<shop::ChosenSpring> each = shop::choose_spring(request);
        if (each) return SpringAdvice{*each, count, false, travel};
    }
    return std::nullopt;
}

}  // namespace

std::optional<SpringAdvice> spring_advice(const files::Case& c, const files::Tool& tool, double compression,
                                          std::vector<shop::Check>& checks, std::vector<std::string>& mends) {
    const tool::Spring* spring = spring_of(tool);
    if (!spring) return std::nullopt;
    const double travel = std::max(compression, least_travel);
    std::optional<SpringAdvice> chosen = chosen_for(c, tool, *spring, travel);
    const files::WoundSprings* wound = wound_of(tool);
    if (!wound) return chosen;
    std::vector<shop::Check> found;
    const SpringAdvice given = as_given(tool, *wound, travel, found);
    bool is_fine = true;
    for (shop::Check& check : found) {
        is_fine = is_fine && check.verdict == shop::Verdict::fine;
        // A caution: springs that set press less and break late, and what buckles or has no room is seen at
        // once.
        if (check.verdict == shop::Verdict::over) check.verdict = shop::Verdict::thin;
    }
    checks.insert(checks.end(), found.begin(), found.end());
    if (!is_fine && chosen)
        mends.push_back(
            words("sufficient: %d springs of %g mm %s, coil %g mm, %g active turns, over %.1f mm at %.0f of "
                  "%.0f MPa",
                  chosen->count, chosen->each.spring.wire, chosen->each.wire.c_str(),
                  chosen->each.spring.coil_diameter, chosen->each.spring.turns, travel, chosen->each.stress,
                  chosen->each.allowed_stress));
    return given;
}

}  // namespace overbend::job
