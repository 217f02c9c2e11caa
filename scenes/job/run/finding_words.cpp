// What the figures of a finding say, in words.

#include <algorithm>
#include <cmath>

#include "scenes/files/case/nearest_key.h"
#include "scenes/job/run/findings.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

// What a rule says of its figures, and which ones, in turn: f figure, l limit, 0 to 9 further, d detail, s
// the name of its stroke.
struct RuleWords {
    Rule rule;
    const char* form;
    const char* figures = "";
};

constexpr RuleWords all_words[] = {
    {Rule::interference,
     "the strip, %.1f mm from the blank's left end, is %.2f mm deep in the %s at %.2f mm of travel", "0fd1"},
    {Rule::open_balance, "the energy balance is off by %.2f per cent", "f"},
    {Rule::contact_balance, "the contact forces balance only to within %.2g of the peak force", "f"},
    {Rule::not_compared, "%s: not compared with anything outside the program", "d"},
    {Rule::gauge_without_edge,
     "the gauge does not touch an edge of the strip: at its height the strip continues past it"},
    {Rule::slide_in,
     "the strip must be slid in along the bend line, under the lowered punch: the %s blocks the way from the "
     "front",
     "d"},
    {Rule::slide_off, "the strip must be slid off along the bend line: the %s blocks the way to the front",
     "d"},
    {Rule::least_inside_radius,
     "inside radius %.2f mm is less than the %.2f mm in the table (%s): the bend may crack", "fld"},
    {Rule::least_flange, "a leg of %.2f mm (outside) is less than 0.7 of the die opening, %.2f mm", "fl"},
    {Rule::ram_stroke, "the ram must rise %.1f mm above its stop to release the strip; its stroke is %g mm",
     "fl"},
    {Rule::daylight, "tools, holders and the part need %.1f mm of the %g mm between bed and ram", "fl"},
    {Rule::shut_height, "the closed tools are %.1f mm high; the ram comes down to %.1f mm above the bed",
     "lf"},
    {Rule::load_per_metre, "%.0f kN per metre on the strip's %g mm; rated load of %s: %g kN/m", "f0dl"},
    {Rule::off_centre_load, "the load is %.2f mm from the ram's axis: %.4f kN m of %g kN m", "0fl"},
    {Rule::throat, "the strip reaches %.1f mm behind the punch's axis; the frame is at %g mm", "fl"},
    {Rule::gauge_out, "the gauge is at %.2f mm; its limit is %g mm", "fl"},
    {Rule::gauge_in, "the gauge is at %.2f mm; its nearest position is %g mm", "lf"},
    {Rule::press_energy, "%.2f J of the %g J that the press delivers in a stroke", "fl"},
    {Rule::crank_force,
     "%.2f kN are needed %.2f mm above the bottom, where the crank stands at %.0f degrees; there the press "
     "gives %.2f kN (its %g kN hold from %g degrees down)",
     "f01l23"},
    {Rule::tool_rating, "%.0f kN per metre, rated at %g kN/m", "fl"},
    {Rule::tool_tension,
     "section %.1f mm thick about x %.1f, y %.1f mm, stroke '%s': tension %.0f MPa, allowed %.0f (%.0f with "
     "a "
     "safety factor of %g)",
     "012sf3l4"},
    {Rule::tool_compression,
     "section %.1f mm thick about x %.1f, y %.1f mm, stroke '%s': compression %.0f MPa, allowed %.0f (%.0f "
     "with a safety factor of %g)",
     "012sf3l4"},
    {Rule::thicker_section,
     "section %.1f mm thick about x %.1f, y %.1f mm, stroke '%s': remedy: make it at least %.1f mm thick",
     "012sf"},
    {Rule::tool_line_load,
     "%.0f kN per metre; tools of %.0f HV are usually rated at %.0f kN/m (%.0f to %.0f)", "f0l12"},
    {Rule::tool_contact,
     "edge of radius %g mm at x %.1f, y %.1f mm, stroke '%s': mean contact pressure %.0f MPa, a steel of "
     "%.0f HV is indented from %.0f",
     "012sf3l"},
    {Rule::rounder_edge,
     "edge of radius %g mm at x %.1f, y %.1f mm, stroke '%s': remedy: a radius of at least %.1f mm, or a "
     "harder steel",
     "012sf"},
    {Rule::spring_shear,
     "its springs: shear stress %.0f MPa (with Wahl's factor); %.0f allowed before %s of %g mm sets", "fld0"},
    {Rule::spring_slenderness,
     "its springs: free length at least %.1f mm, %.2f times the coil diameter of %g mm; from %.2f times "
     "they buckle unless a pin or a bore guides them",
     "0f1l"},
    {Rule::spring_room,
     "its springs: %.1f mm in diameter; %.0f of them in a block of %.1f x %.1f mm have %.1f mm each",
     "f012l"},
    {Rule::spring_length,
     "its springs: %.0f of %.1f mm in diameter need %.1f mm along the bend line, in a block %.1f mm wide "
     "and %.1f mm long; remedy: a longer one",
     "01f2l"},
    {Rule::other_springs,
     "sufficient: %.0f springs in %.0f rows along the bend line, wire %g mm, %s, coil %g mm, %g active "
     "turns, over %.1f mm at %.0f of %.0f MPa",
     "051d234fl"},
};

// The form with its figures put in.
std::string filled(const files::Case& c, const Finding& f, const RuleWords& rule) {
    std::string text;
    const char* figure = rule.figures;
    for (std::string form = rule.form; !form.empty();) {
        const std::size_t verb = form.find('%'), end = form.find_first_of("fgs", verb);
        text += form.substr(0, verb);
        if (verb == std::string::npos) break;
        const std::string as = form.substr(verb, end + 1 - verb);
        const char which = *figure++;
        if (which == 'd') text += f.detail;
        if (which == 's') text += c.steps[f.place.step].name;
        if (which == 'f') text += words(as.c_str(), f.figure);
        if (which == 'l') text += words(as.c_str(), f.limit);
        if (which >= '0' && which <= '9') text += words(as.c_str(), f.further[which - '0']);
        form.erase(0, end + 1);
    }
    return text;
}

// A figure to be written with two decimals, which must not read "-0.00".
double without_minus_zero(double value) {
    return std::abs(value) < 0.005 ? 0.0 : value;
}

const char* side_words(double side) {
    return side < 0.0 ? " (left of the bend)" : " (right of the bend)";
}

// What depends on more than its figures, whole or what follows on the form.
std::string special_words(const files::Case& c, const Finding& f) {
    const std::string other = f.place.bend < 0 ? "" : c.part.bends[f.place.bend].name;
    switch (f.rule) {
        case Rule::finished_angle:
            return words("%.2f degrees instead of %.2f; tolerance %.2f", without_minus_zero(f.further[0]),
                         f.further[1], f.limit);
        case Rule::finished_leg:
            return words("leg %.0f is %.2f mm instead of %.2f, measured outside; tolerance %.2f",
                         f.further[2], f.further[0], f.further[1], f.limit);
        case Rule::finished_radius:
            return words("inside radius %.2f mm instead of %.2f; tolerance %.2f", f.further[0], f.further[1],
                         f.limit);
        case Rule::finished_profile:
            return words("the finished profile deviates by %.2f mm from the drawing", f.figure) +
                   (f.further[0] > 0.0 ? words(" at flat %.0f", f.further[0]) : "") +
                   words("; tolerance %.2f", f.limit);
        case Rule::slip_of_units:
            return words("it is drawn with %g degrees; if %.4g radians were meant, give %.4g degrees",
                         f.further[0], f.further[0], f.further[1]);
        case Rule::outer_fibre_strain:
            return words("the outer fibre is stretched by %.0f per cent; %.0f are borne by %s: it ", f.figure,
                         f.limit,
                         f.further[0] > 0.0 ? "the metal's reduction of area" : "bends of the least radius") +
                   (f.severity == Severity::stops ? "will crack" : "may crack");
        case Rule::hole_to_bend:
            return (f.figure < 0.0
                        ? words("its edge reaches %.2f mm into the bend; keep it %.2f mm (r + %g s) away",
                                -f.figure, f.limit, f.further[0])
                        : words("its edge is %.2f mm from where the bend begins, less than %.2f "
                                "mm (r + %g s)",
                                f.figure, f.limit, f.further[0])) +
                   ", bend '" + other + "'";
        case Rule::die_opening:
            return words(
                "a die opening of %.1f mm between arc centres (%.1f mm at the corners) is far from the %.1f "
                "mm usual for this thickness (%.1f to %.1f): %s",
                f.figure, f.further[3], f.further[0], f.further[1], f.further[2],
                f.figure < f.further[0] ? "the force is high, and the shoulders mark the strip"
                                        : "flanges must be long, and springback varies");
        case Rule::least_flange:
            return side_words(f.further[0]);
        case Rule::flange_on_die:
            return (other.empty()
                        ? words(
                              "%.2f mm of strip beside the bend line slips off the die's shoulder; at least "
                              "%.2f mm is needed",
                              f.figure, f.limit)
                        : "bend '" + other + "', already made, lies on the die's shoulder") +
                   side_words(f.further[0]);
        case Rule::angle_of_tools:
            return words("with springback the bend needs %.1f degrees under load (%s); the tools reach %.1f",
                         f.figure, f.further[0] > 0.0 ? "simulated" : "estimated", f.limit);
        case Rule::return_flange:
            return words(
                "a return flange of %.2f mm, %.2f mm away, hits the punch; up to %.2f mm clears it, beyond "
                "bend '%s'",
                f.figure, f.further[0], f.limit, other.c_str());
        case Rule::press_force:
            return words("%.2f kN of the press's %g kN, %.0f per cent", f.figure, f.limit,
                         100.0 * f.figure / f.limit);
        case Rule::shut_height:
            if (f.severity == Severity::within) return "";
            return words("; remedy: pack %.1f mm under the die", f.figure - f.limit);
        case Rule::web_to_edge:
            return f.figure < 0.0
                       ? words("it reaches %.2f mm beyond %s", -f.figure,
                               f.further[0] > 0.0 ? "an end of the blank" : "the edge of the strip")
                       : words("a web of %.2f mm to %s, less than one thickness, %.2f mm: the web may tear",
                               f.figure, f.further[0] > 0.0 ? "an end of the blank" : "the edge of the strip",
                               f.limit);
        case Rule::least_hole:
            return words("%.2f mm is less than one thickness, %.2f mm: ", f.figure, f.limit) +
                   (f.severity == Severity::caution ? "too small for a laser as well; remedy: drill it"
                                                    : "to be cut by laser, not punched");
        case Rule::tool_line_load:
            return f.severity == Severity::within ? "" : ": its edges wear early; remedy: a harder steel";
        case Rule::tool_contact:
            return (f.further[4] > 0.0 ? " (limited by the yield of the strip)" : "") +
                   (f.severity == Severity::within
                        ? std::string()
                        : words("; remedy: a radius of at least %.1f mm, or a harder steel", f.further[5]));
        case Rule::tool_tension:
        case Rule::tool_compression:
            return f.further[5] > f.further[0]
                       ? words("; remedy: make it at least %.1f mm thick", f.further[5])
                       : std::string();
        case Rule::side_thrust:
            return words(
                "side thrust of %.0f kN per metre (%.2f kN) pushes the punch to the %s and the die to the "
                "%s; it needs %s",
                f.figure, f.further[1], f.further[0] > 0.0 ? "right" : "left",
                f.further[0] > 0.0 ? "left" : "right", f.detail.c_str());
        case Rule::tilting:
            return words(
                "its load acts %.1f mm from the middle of the face that holds it, %.1f mm wide, and tilts it "
                "with %.2f N m; it needs %s",
                f.figure, f.further[0], f.further[1], f.detail.c_str());
        default:
            return "";
    }
}

}  // namespace

const char* heading_of(Severity severity) {
    constexpr const char* in_order[] = {"Problems", "Cautions", "Notes for the operator", "Not checked",
                                        "Within the limits"};
    return in_order[static_cast<int>(severity)];
}

const char* verdict_word(Severity severity) {
    if (severity == Severity::within) return "fine";
    return severity == Severity::stops ? "over" : "thin";
}

std::string place_words(const files::Case& c, const FindingPlace& place) {
    switch (place.of) {
        case On::bend:
            return "bend '" + c.part.bends[place.bend].name + "'";
        case On::step:
            return "step '" + c.steps[place.step].name + "'";
        case On::cutout:
            return "cut-out " + std::to_string(place.cutout + 1);
        case On::tool:
            return "tool '" + c.tools[place.tool].name + "'";
        case On::job:
            break;
    }
    return "";
}

std::string finding_words(const files::Case& c, const Finding& f) {
    if (f.severity == Severity::not_checked) return f.detail;
    std::string text;
    for (const RuleWords& rule : all_words)
        if (rule.rule == f.rule) text = filled(c, f, rule);
    text += special_words(c, f);
    if (text.empty()) text = f.detail;
    return text + (f.succeeded ? "; the simulated stroke succeeded" : "");
}

std::string sentence(const files::Case& c, const Finding& f) {
    std::string whose = place_words(c, f.place);
    if (f.severity == Severity::not_checked) {
        whose = facts_of(f.rule).name;
        if (f.place.of == On::tool) whose += " '" + c.tools[f.place.tool].name + "'";
    }
    return (whose.empty() ? "" : whose + ": ") + finding_words(c, f);
}

std::vector<Findings> alike(const files::Case& c, const Findings& list) {
    std::vector<Findings> groups;
    for (const Finding& f : list) {
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const Findings& group) {
            const Finding& g = group.front();
            return f.severity != Severity::stops && f.severity == g.severity && f.rule == g.rule &&
                   f.place.of == g.place.of && source_of(f) == source_of(g) &&
                   finding_words(c, f) == finding_words(c, g);
        });
        if (same == groups.end())
            groups.push_back({f});
        else
            same->push_back(f);
    }
    return groups;
}

std::string sentence(const files::Case& c, const Findings& alike) {
    const Finding& first = alike.front();
    if (alike.size() == 1 || first.severity == Severity::not_checked) return sentence(c, first);
    // "step 'hook'": what it is, and whose.
    const std::string of_first = place_words(c, first.place);
    const std::size_t space = of_first.find(' ');
    std::vector<std::string> whose;
    for (const Finding& f : alike) {
        const std::string name = place_words(c, f.place).substr(space + 1);
        if (std::find(whose.begin(), whose.end(), name) == whose.end()) whose.push_back(name);
    }
    if (whose.size() == 1) return sentence(c, first);
    return of_first.substr(0, space) + "s " + files::listed(whose, " and ") + ": " + finding_words(c, first);
}

std::vector<std::string> sentences(const files::Case& c, const Findings& list) {
    std::vector<std::string> all;
    for (const Findings& group : alike(c, list)) all.push_back(sentence(c, group));
    return all;
}

std::string why_not(const files::Case& c, const Findings& list) {
    const Findings against = with(list, Severity::stops);
    return against.empty() ? "" : sentence(c, against.front());
}

}  // namespace overbend::job
