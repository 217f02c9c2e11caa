// Springs behind pads and clamps: chosen for the force that a case gives, or looked at as the case has them.

#include <algorithm>

#include "scenes/job/shop/shop_parts.h"

namespace overbend::job {

namespace {

constexpr double least_travel = 1.0;    // mm that a spring is chosen for even where the job hardly moves it
constexpr double constant_rises = 1.2;  // a cushion of constant force may rise by so much over its travel
constexpr int counts[] = {1, 2, 3, 4, 6, 8};

// What a pad or a clamp is, and has behind it; null: none.
struct Sprung {
    double width = 0.0;  // of its block
    const tool::Spring* spring = nullptr;
    const files::WoundSprings* wound = nullptr;
};
Sprung sprung(const files::Tool& tool) {
    const auto there = [](const auto& value) { return value ? &*value : nullptr; };
    if (const auto* pad = std::get_if<files::Pad>(&tool.shape))
        return {pad->block.width, &pad->spring, there(pad->wound)};
    const auto* clamp = std::get_if<files::Clamp>(&tool.shape);
    return clamp ? Sprung{clamp->block.width, there(clamp->spring), there(clamp->wound)} : Sprung{};
}

// The case's own wire is not named: it is looked at as the first of the list that is drawn so thick.
const shop::SpringWire& wire_for(double diameter) {
    for (const shop::SpringWire& wire : shop::spring_wires())
        if (diameter <= wire.most) return wire;
    return shop::spring_wires().back();
}

SpringAdvice as_given(const files::Tool& tool, const files::WoundSprings& wound, double travel,
                      Findings& checks) {
    const shop::SpringWire& wire = wire_for(wound.each.wire);
    SpringAdvice advice;
    advice.given = true, advice.count = wound.count, advice.travel = travel;
    const double end = wound.preload / wound.count + tool::spring_rate(wound.each) * travel;
    const shop::ChosenSpring& s = advice.each = shop::spring_at_work(wound.each, wire, end, travel);
    const auto check = [&](Rule rule, double figure, double limit, const std::vector<double>& further,
                           const std::string& detail) {
        checks.push_back({judged(figure, limit, 1.0), rule, figure, limit, further, detail});
    };
    check(Rule::spring_shear, s.stress, s.allowed_stress, {wound.each.wire}, wire.name);
    check(Rule::spring_slenderness, s.slenderness, shop::buckles_from,
          {s.free_length, s.spring.coil_diameter}, "");
    check(Rule::spring_room, s.spring.coil_diameter + s.spring.wire, sprung(tool).width, {}, "");
    return advice;
}

// The fewest that do it.
std::optional<SpringAdvice> chosen_for(const files::Case& c, const files::Tool& tool,
                                       const tool::Spring& spring, double travel) {
    const double start = spring.preload * c.width, end = start + spring.rate * travel * c.width;
    shop::SpringRequest request;
    request.travel = travel;
    request.most_outside = sprung(tool).width;
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

std::optional<SpringAdvice> spring_advice(const files::Case& c, int index, double compression,
                                          Findings& checks, Findings& mends) {
    const files::Tool& tool = c.tools[index];
    const Sprung by = sprung(tool);
    if (!by.spring) return std::nullopt;
    const double travel = std::max(compression, least_travel);
    std::optional<SpringAdvice> chosen = chosen_for(c, tool, *by.spring, travel);
    if (!by.wound) return chosen;
    const std::size_t before = checks.size();
    const SpringAdvice given = as_given(tool, *by.wound, travel, checks);
    bool is_fine = true;
    for (std::size_t i = before; i < checks.size(); ++i) {
        is_fine = is_fine && checks[i].severity == Severity::within;
        // Springs that set press less and break late, and what buckles or has no room is seen at once.
        if (checks[i].severity == Severity::stops) checks[i].severity = Severity::caution;
    }
    if (is_fine || !chosen) return given;
    const shop::ChosenSpring& s = chosen->each;
    mends.push_back({Severity::caution,
                     Rule::other_springs,
                     s.stress,
                     s.allowed_stress,
                     {1.0 * chosen->count, s.spring.wire, s.spring.coil_diameter, s.spring.turns, travel},
                     s.wire});
    return given;
}

}  // namespace overbend::job
