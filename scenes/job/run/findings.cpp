#include "scenes/job/run/findings.h"

namespace overbend::job {

namespace {

constexpr const char* by_mechanics = "the mechanics";
constexpr const char* by_tools = "geometry of the tools";
constexpr const char* by_practice = "common practice";
constexpr const char* by_beams = "beam theory";
constexpr const char* by_hertz = "Hertz, line contact; Johnson, Contact Mechanics";
constexpr const char* by_statics = "statics of the strip's forces on the tool";
constexpr const char* by_springs = "Shigley, chapter 10";

constexpr RuleFacts all_rules[] = {
    {Rule::not_solved, RuleGroup::stroke, "stroke", "", by_mechanics},
    {Rule::folded, RuleGroup::stroke, "fold", "", by_mechanics},
    {Rule::stop_not_reached, RuleGroup::stroke, "stop", "", by_mechanics},
    {Rule::interference, RuleGroup::stroke, "interference", "mm", "geometry of strip and tools"},
    {Rule::open_balance, RuleGroup::stroke, "balance of work", "%", by_mechanics},
    {Rule::contact_balance, RuleGroup::stroke, "balance of forces", "", by_mechanics},
    {Rule::not_compared, RuleGroup::stroke, "comparison", "", "the manual's page on accuracy"},
    {Rule::gauge_without_edge, RuleGroup::stroke, "gauge", "", "geometry of the strip"},
    {Rule::slide_in, RuleGroup::stroke, "way in", "", by_tools},
    {Rule::slide_off, RuleGroup::stroke, "way off", "", by_tools},
    {Rule::finished_angle, RuleGroup::part, "finished angle", "deg", "the drawing"},
    {Rule::finished_leg, RuleGroup::part, "finished leg", "mm", "the drawing"},
    {Rule::finished_radius, RuleGroup::part, "finished inside radius", "mm", "the drawing"},
    {Rule::finished_profile, RuleGroup::part, "finished profile", "mm", "the drawing"},
    {Rule::slip_of_units, RuleGroup::part, "angle as drawn", "deg", "the drawing"},
    {Rule::least_inside_radius, RuleGroup::trade, "least inside radius", "mm", ""},
    {Rule::outer_fibre_strain, RuleGroup::trade, "outer-fibre strain", "%",
     "the condition behind Kalpakjian and Schmid's least radius"},
    {Rule::hole_to_bend, RuleGroup::trade, "hole to bend", "mm",
     "design guideline, lecture text in a public repository"},
    {Rule::web_to_edge, RuleGroup::trade, "web to the edge", "mm", by_practice},
    {Rule::least_hole, RuleGroup::trade, "least hole", "mm", by_practice},
    {Rule::die_opening, RuleGroup::trade, "die opening", "mm", "common practice; the band is overbend's"},
    {Rule::least_flange, RuleGroup::trade, "least flange", "mm", "common practice, from memory"},
    {Rule::flange_on_die, RuleGroup::trade, "flange on the die", "mm",
     "geometry of the strip on the shoulder"},
    {Rule::nose_angle, RuleGroup::trade, "nose in the groove", "deg", by_tools},
    {Rule::nose_width, RuleGroup::trade, "nose in the groove", "mm", by_tools},
    {Rule::angle_of_tools, RuleGroup::trade, "angle of the tools", "deg",
     "geometry of the tools; springback by the mechanics"},
    {Rule::return_flange, RuleGroup::trade, "return flange", "mm", "geometry of the punch"},
    {Rule::press, RuleGroup::press, "press", "", by_practice},
    {Rule::press_force, RuleGroup::press, "force", "kN", by_practice},
    {Rule::ram_stroke, RuleGroup::press, "stroke", "mm", by_practice},
    {Rule::daylight, RuleGroup::press, "daylight", "mm", by_practice},
    {Rule::shut_height, RuleGroup::press, "shut height", "mm", by_practice},
    {Rule::load_per_metre, RuleGroup::press, "load per metre", "kN/m", by_practice},
    {Rule::off_centre_load, RuleGroup::press, "off-centre load", "kN m", by_practice},
    {Rule::throat, RuleGroup::press, "throat", "mm", by_practice},
    {Rule::gauge_out, RuleGroup::press, "gauge", "mm", by_practice},
    {Rule::gauge_in, RuleGroup::press, "gauge", "mm", by_practice},
    {Rule::press_energy, RuleGroup::press, "energy", "J", by_practice},
    {Rule::crank_force, RuleGroup::press, "force above the bottom", "kN",
     "statics of the crank; the rated angle by common practice"},
    {Rule::tool_strength, RuleGroup::tool, "tool strength", "", by_beams},
    {Rule::tool_sections, RuleGroup::tool, "sections of the tool", "", by_beams},
    {Rule::tool_rating, RuleGroup::tool, "rating", "kN/m", "its maker"},
    {Rule::tool_tension, RuleGroup::tool, "tension", "MPa", by_beams},
    {Rule::tool_compression, RuleGroup::tool, "compression", "MPa", by_beams},
    {Rule::tool_line_load, RuleGroup::tool, "line load", "kN/m", by_practice},
    {Rule::tool_contact, RuleGroup::tool, "contact", "MPa",
     "Hertz, line contact; full indentation: Tabor, The Hardness of Metals"},
    {Rule::side_thrust, RuleGroup::tool, "side thrust", "kN/m", by_statics},
    {Rule::tilting, RuleGroup::tool, "load beside the holder", "mm", by_statics},
    {Rule::spring_shear, RuleGroup::tool, "spring", "MPa", by_springs},
    {Rule::spring_slenderness, RuleGroup::tool, "spring's slenderness", "", by_springs},
    {Rule::spring_room, RuleGroup::tool, "spring's room", "mm", "by geometry"},
    {Rule::spring_length, RuleGroup::tool, "spring's room", "mm", "by geometry"},
    {Rule::thicker_section, RuleGroup::tool, "thicker section", "mm", by_beams},
    {Rule::rounder_edge, RuleGroup::tool, "rounder edge", "mm", by_hertz},
    {Rule::other_springs, RuleGroup::tool, "other springs", "MPa", by_springs},
};

bool is_the_same(const Finding& a, const Finding& b) {
    const FindingPlace &p = a.place, &q = b.place;
    return a.rule == b.rule && a.severity == b.severity && a.figure == b.figure && a.limit == b.limit &&
           a.further == b.further && a.detail == b.detail && p.of == q.of && p.step == q.step &&
           p.bend == q.bend && p.cutout == q.cutout && p.tool == q.tool;
}

}  // namespace

FindingPlace on_step(int step, int state) {
    return {On::step, step, -1, -1, -1, state, std::nullopt};
}

FindingPlace on_bend(int bend) {
    return {On::bend, -1, bend, -1, -1, -1, std::nullopt};
}

FindingPlace on_tool(int tool) {
    return {On::tool, -1, -1, -1, tool, -1, std::nullopt};
}

const RuleFacts& facts_of(Rule rule) {
    return *std::find_if(std::begin(all_rules), std::end(all_rules),
                         [&](const RuleFacts& facts) { return facts.rule == rule; });
}

std::string source_of(const Finding& f) {
    return f.source.empty() ? facts_of(f.rule).source : f.source;
}

void add(Findings& list, const Finding& finding) {
    const bool said =
        std::any_of(list.begin(), list.end(), [&](const Finding& f) { return is_the_same(f, finding); });
    if (!said) list.push_back(finding);
}

void not_checked(Rule rule, const std::string& why, Findings& list) {
    add(list, {Severity::not_checked, rule, 0.0, 0.0, {}, why});
}

Findings with(const Findings& list, Severity severity) {
    return those(list, [&](const Finding& f) { return f.severity == severity; });
}

Findings of_group(const Findings& list, RuleGroup group) {
    return those(list, [&](const Finding& f) { return facts_of(f.rule).group == group; });
}

Findings of_step(const Findings& list, int step) {
    return those(list, [&](const Finding& f) {
        return f.place.of == On::step && f.place.step == step && facts_of(f.rule).group == RuleGroup::stroke;
    });
}

Findings by_severity(Findings list) {
    std::stable_sort(list.begin(), list.end(),
                     [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
    return list;
}

bool stops(const Findings& list) {
    return std::any_of(list.begin(), list.end(),
                       [](const Finding& f) { return f.severity == Severity::stops; });
}

}  // namespace overbend::job
