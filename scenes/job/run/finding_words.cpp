// What the figures of a finding say, in words.

#include <cmath>

#include "scenes/job/run/findings.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

// A figure to be written with two decimals, which must not read "-0.00".
double without_minus_zero(double value) {
    return std::abs(value) < 0.005 ? 0.0 : value;
}

std::string stroke_words(const Finding& f) {
    const char* const detail = f.detail.c_str();
    switch (f.rule) {
        case Rule::interference:
            return words(
                "the strip, %.1f mm from the blank's left end, is %.2f mm deep in the %s at %.2f mm of "
                "travel",
                f.further[0], f.figure, detail, f.further[1]);
        case Rule::open_balance:
            return words("the energy balance is off by %.2f per cent", f.figure);
        case Rule::contact_balance:
            return words("the contact forces balance only to within %.2g of the peak force", f.figure);
        case Rule::gauge_without_edge:
            return "the gauge does not touch an edge of the strip: at its height the strip continues past it";
        case Rule::slide_in:
            return words(
                "the strip must be slid in along the bend line, under the lowered punch: the %s blocks the "
                "way "
                "from the front",
                detail);
        case Rule::slide_off:
            return words("the strip must be slid off along the bend line: the %s blocks the way to the front",
                         detail);
        default:
            return f.detail;
    }
}

std::string part_words(const Finding& f) {
    if (f.rule == Rule::finished_angle)
        return words("%.2f degrees instead of %.2f; tolerance %.2f", without_minus_zero(f.further[0]),
                     f.further[1], f.limit);
    return words("flat %.0f of %g mm comes out %.2f mm %s", f.further[0], f.further[1], std::abs(f.figure),
                 f.figure > 0.0 ? "short" : "long");
}

const char* side_words(double side) {
    return side < 0.0 ? " (left of the bend)" : " (right of the bend)";
}

// Of the blank and its bends.
std::string drawing_words(const files::Case& c, const Finding& f) {
    switch (f.rule) {
        case Rule::least_inside_radius:
            return words(
                "inside radius %.2f mm is less than the %.2f mm in the table (%s): the bend may crack",
                f.figure, f.limit, f.detail.c_str());
        case Rule::outer_fibre_strain:
            return words(
                "%s the outer fibre is stretched by %.0f per cent, more than the card's elongation of %.0f",
                f.further[0] > 0.0 ? "in the simulated bend" : "at the drawing's radius", f.figure, f.limit);
        default:
            return (f.figure < 0.0
                        ? words("its edge reaches %.2f mm into the bend; keep it %.2f mm (r + 1.5 s) away",
                                -f.figure, f.limit)
                        : words("its edge is %.2f mm from where the bend begins, less than %.2f "
                                "mm (r + 1.5 s)",
                                f.figure, f.limit)) +
                   ", bend '" + c.part.bends[f.place.bend].name + "'";
    }
}

// Of a V stroke and its tools.
std::string vee_words(const files::Case& c, const Finding& f) {
    const std::string other = f.place.bend < 0 ? "" : c.part.bends[f.place.bend].name;
    switch (f.rule) {
        case Rule::die_opening:
            return words(
                "a die opening of %.1f mm is far from the %.1f mm usual for this thickness (%.1f to "
                "%.1f): %s",
                f.figure, f.further[0], f.further[1], f.further[2],
                f.figure < f.further[0] ? "the force is high, and the shoulders mark the strip"
                                        : "flanges must be long, and springback varies");
        case Rule::least_flange:
            return words("a leg of %.2f mm (outside) is less than 0.7 of the die opening, %.2f mm", f.figure,
                         f.limit) +
                   side_words(f.further[0]);
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
                "bend "
                "'%s'",
                f.figure, f.further[0], f.limit, other.c_str());
        default:
            return f.detail;
    }
}

std::string trade_words(const files::Case& c, const Finding& f) {
    const bool of_step = f.place.of == On::step;
    return (of_step ? vee_words(c, f) : drawing_words(c, f)) +
           (f.succeeded ? "; the simulated stroke succeeded" : "");
}

std::string press_words(const Finding& f) {
    const double figure = f.figure, limit = f.limit;
    switch (f.rule) {
        case Rule::press_force:
            return words("%.2f kN of the press's %g kN, %.0f per cent", figure, limit,
                         100.0 * figure / limit);
        case Rule::ram_stroke:
            return words("the ram must rise %.1f mm above its stop to release the strip; its stroke is %g mm",
                         figure, limit);
        case Rule::daylight:
            return words("tools, holders and the part need %.1f mm of the %g mm between bed and ram", figure,
                         limit);
        case Rule::shut_height:
            return words("the closed tools are %.1f mm high; the ram comes down to %.1f mm above the bed",
                         limit, figure) +
                   (f.severity == Severity::within
                        ? ""
                        : words("; remedy: pack %.1f mm under the die", figure - limit));
        case Rule::load_per_metre:
            return words("%.0f kN per metre on the strip's %g mm; rated load of %s: %g kN/m", figure,
                         f.further[0], f.detail.c_str(), limit);
        case Rule::off_centre_load:
            return words("the load is %.2f mm from the ram's axis: %.4f kN m of %g kN m", f.further[0],
                         figure, limit);
        case Rule::throat:
            return words("the strip reaches %.1f mm behind the punch's axis; the frame is at %g mm", figure,
                         limit);
        case Rule::gauge_out:
            return words("the gauge is at %.2f mm; its limit is %g mm", figure, limit);
        case Rule::gauge_in:
            return words("the gauge is at %.2f mm; its nearest position is %g mm", limit, figure);
        case Rule::press_energy:
            return words("%.2f J of the %g J that the press delivers in a stroke", figure, limit);
        default:
            return f.detail;
    }
}

std::string section_words(const Finding& f, const char* stroke) {
    return words("section %.1f mm thick about x %.1f, y %.1f mm, stroke '%s'", f.further[0], f.further[1],
                 f.further[2], stroke);
}

std::string edge_words(const Finding& f, const char* stroke) {
    return words("edge of radius %g mm at x %.1f, y %.1f mm, stroke '%s'", f.further[0], f.further[1],
                 f.further[2], stroke);
}

// Of its sections and edges.
std::string strength_words(const files::Case& c, const Finding& f) {
    const char* const stroke = c.steps[f.place.step].name.c_str();
    switch (f.rule) {
        case Rule::tool_tension:
        case Rule::tool_compression:
            return section_words(f, stroke) +
                   words(": %s %.0f MPa, allowed %.0f (%.0f with a safety factor of %g)",
                         f.rule == Rule::tool_tension ? "tension" : "compression", f.figure, f.further[3],
                         f.limit, f.further[4]);
        case Rule::thicker_section:
            return section_words(f, stroke) + words(": remedy: make it at least %.1f mm thick", f.figure);
        case Rule::tool_contact:
            return edge_words(f, stroke) +
                   words(": contact pressure %.0f MPa%s, allowed %.0f", f.figure,
                         f.further[4] > 0.0 ? " (limited by the yield of the strip)" : "", f.further[3]);
        default:
            return edge_words(f, stroke) +
                   words(": remedy: a radius of at least %.1f mm, or a harder steel", f.figure);
    }
}

std::string spring_words(const files::Case& c, const Finding& f) {
    const char* const name = c.tools[f.place.tool].name.c_str();
    switch (f.rule) {
        case Rule::spring_shear:
            return words(
                "springs of '%s': shear stress %.0f MPa (with Wahl's factor); %.0f allowed before %s of %g "
                "mm sets",
                name, f.figure, f.limit, f.detail.c_str(), f.further[0]);
        case Rule::spring_slenderness:
            return words(
                "springs of '%s': free length at least %.1f mm, %.2f times the coil diameter of %g mm; from "
                "%.2f "
                "times they buckle unless a pin or a bore guides them",
                name, f.further[0], f.figure, f.further[1], f.limit);
        case Rule::spring_room:
            return words("springs of '%s': %.1f mm across, in a block of %.1f mm", name, f.figure, f.limit);
        default:
            return words(
                "sufficient: %.0f springs of %g mm %s, coil %g mm, %g active turns, over %.1f mm at %.0f of "
                "%.0f MPa",
                f.further[0], f.further[1], f.detail.c_str(), f.further[2], f.further[3], f.further[4],
                f.figure, f.limit);
    }
}

std::string tool_words(const files::Case& c, const Finding& f) {
    switch (f.rule) {
        case Rule::tool_rating:
            return words("%.0f kN per metre, rated at %g kN/m", f.figure, f.limit);
        case Rule::spring_shear:
        case Rule::spring_slenderness:
        case Rule::spring_room:
        case Rule::other_springs:
            return spring_words(c, f);
        default:
            return strength_words(c, f);
    }
}

}  // namespace

const char* heading_of(Severity severity) {
    switch (severity) {
        case Severity::stops:
            return "Problems";
        case Severity::caution:
            return "Cautions";
        case Severity::note:
            return "Notes for the operator";
        case Severity::not_checked:
            return "Not checked";
        case Severity::within:
            break;
    }
    return "Within the limits";
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
    switch (facts_of(f.rule).group) {
        case RuleGroup::stroke:
            return stroke_words(f);
        case RuleGroup::part:
            return part_words(f);
        case RuleGroup::trade:
            return trade_words(c, f);
        case RuleGroup::press:
            return press_words(f);
        case RuleGroup::tool:
            break;
    }
    return tool_words(c, f);
}

std::string sentence(const files::Case& c, const Finding& f) {
    std::string whose = place_words(c, f.place);
    if (f.severity == Severity::not_checked) {
        whose = facts_of(f.rule).name;
        if (f.place.of == On::tool) whose += " '" + c.tools[f.place.tool].name + "'";
    }
    return (whose.empty() ? "" : whose + ": ") + finding_words(c, f);
}

std::vector<std::string> sentences(const files::Case& c, const Findings& list) {
    std::vector<std::string> all;
    for (const Finding& f : list) all.push_back(sentence(c, f));
    return all;
}

std::string why_not(const files::Case& c, const Findings& list) {
    const Findings against = with(list, Severity::stops);
    return against.empty() ? "" : sentence(c, against.front());
}

}  // namespace overbend::job
