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

SpringAdvice as_given(const files::Case& c, const files::Tool& tool, const files::WoundSprings& wound,
                      double travel, Findings& checks) {
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
    const double width = sprung(tool).width, length = tool_length(c, tool);
    advice.rows = shop::spring_rows(wound.count, width, length);
    check(Rule::spring_room, s.spring.coil_diameter + s.spring.wire, advice.rows.each,
          {1.0 * wound.count, width, length}, "");
    return advice;
}

// What each of so many springs has to do; nothing: no wound spring does that.
std::optional<shop::SpringRequest> request_of(const files::Case& c, const tool::Spring& spring, double travel,
                                              int count) {
    const double start = spring.preload * c.width, end = start + spring.rate * travel * c.width;
    shop::SpringRequest request;
    request.travel = travel;
    request.force_start = start / count;
    request.force_end = std::max(end, start * (spring.rate > 0.0 ? 1.0 : constant_rises)) / count;
    if (!(request.force_end > request.force_start)) return std::nullopt;
    return request;
}

double outside(const shop::ChosenSpring& s) {
    return s.spring.coil_diameter + s.spring.wire;
}

// The fewest that do it and have room under the block, side by side across it and along the bend line. Where
// none have, those in a single row that want the least length of it.
std::optional<SpringAdvice> chosen_for(const files::Case& c, const files::Tool& tool,
                                       const tool::Spring& spring, double travel) {
    const double width = sprung(tool).width, length = tool_length(c, tool);
    std::optional<SpringAdvice> shortest;
    for (const int count : counts) {
        std::optional<shop::SpringRequest> request = request_of(c, spring, travel, count);
        if (!request) return std::nullopt;
        const shop::SpringRows rows = shop::spring_rows(count, width, length);
        request->most_outside = rows.each;
        std::optional<shop::ChosenSpring> each = shop::choose_spring(*request);
        if (each) return SpringAdvice{*each, count, false, travel, rows};
        request->most_outside = width;
        each = shop::choose_spring(*request);
        if (!each) continue;
        const SpringAdvice row{*each, count, false, travel, {1, count, outside(*each)}};
        if (!shortest || row.row_length() < shortest->row_length()) shortest = row;
    }
    return shortest;
}

// Springs that have no room as the block is.
void tell_of_length(const files::Case& c, const files::Tool& tool, const SpringAdvice& chosen,
                    Findings& checks) {
    const double length = tool_length(c, tool), needed = chosen.row_length();
    checks.push_back({needed > length + 1e-9 ? Severity::caution : Severity::within,
                      Rule::spring_length,
                      needed,
                      length,
                      {1.0 * chosen.count, outside(chosen.each), sprung(tool).width}});
}

}  // namespace

std::optional<SpringAdvice> spring_advice(const files::Case& c, int index, double compression,
                                          Findings& checks, Findings& mends) {
    const files::Tool& tool = c.tools[index];
    const Sprung by = sprung(tool);
    if (!by.spring) return std::nullopt;
    const double travel = std::max(compression, least_travel);
    std::optional<SpringAdvice> chosen = chosen_for(c, tool, *by.spring, travel);
    if (!by.wound) {
        if (chosen) tell_of_length(c, tool, *chosen, checks);
        return chosen;
    }
    const std::size_t before = checks.size();
    const SpringAdvice given = as_given(c, tool, *by.wound, travel, checks);
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
                     {1.0 * chosen->count, s.spring.wire, s.spring.coil_diameter, s.spring.turns, travel,
                      1.0 * chosen->rows.rows},
                     s.wire});
    return given;
}

}  // namespace overbend::job
