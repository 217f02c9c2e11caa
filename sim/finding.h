// One thing that was found out about a job, as figures: a problem, a caution or a note that is to be
// known. Each check makes one; scenes/job/run/findings.h keeps their list and makes words of them.

#pragma once

#include <Eigen/Core>
#include <optional>
#include <string>
#include <vector>

namespace overbend {

enum class Severity {
    stops,        // the job cannot be made so
    caution,      // it may go wrong, or a margin is thin
    note,         // for the operator
    not_checked,  // the rule could not be asked; the detail says why
    within        // a limit that is kept: in lists of checks, never in a list of findings
};

// What was looked at, and what the words need beside figure and limit: [further figures; detail].
enum class Rule {
    // strokes
    not_solved,        // [; the reason]
    folded,            // [; the reason]
    stop_not_reached,  // [; the reason]
    interference,      // how deep the strip is in a tool [mm on the blank, mm of travel; the tool]
    open_balance,
    contact_balance,
    not_compared,  // nothing outside the program is like this stroke [; what it is]
    gauge_without_edge,
    slide_in,   // [; the tool in the way]
    slide_off,  // [; the tool in the way]
    // the finished part
    finished_angle,    // how far it is off [deg finished, deg drawn]
    finished_leg,      // how far it is off [mm finished, mm drawn, number of the flat]
    finished_radius,   // how far it is off [mm finished, mm drawn]
    finished_profile,  // how far it is off, furthest over its limit [number of the flat; 0: at a bend]
    slip_of_units,     // [deg drawn, deg that it is in radians]
    // shop rules
    least_inside_radius,  // [; the table's row]
    outer_fibre_strain,   // [1 against the reduction of area, 0 against a least radius]
    hole_to_bend,         // bend: the nearest [thicknesses beside the radius]
    web_to_edge,          // [1 an end of the blank, 0 an edge along it]
    least_hole,           // [mm below which it is no note but a caution]
    die_opening,          // between arc centres [usual, least, most, between corners]
    least_flange,         // [side: -1 left of the bend, 1 right]
    flange_on_die,        // bend: made before, that comes onto the shoulder [side]
    nose_angle,           // [; what does not match]
    nose_width,           // [; what does not match]
    angle_of_tools,       // [1 simulated, 0 estimated]
    return_flange,        // bend: made before [mm between the bends]
    // the press
    press,  // none is named
    press_force,
    ram_stroke,
    daylight,
    shut_height,
    load_per_metre,   // [mm of strip; who bears it]
    off_centre_load,  // [mm off the axis]
    throat,
    gauge_out,
    gauge_in,
    press_energy,
    crank_force,  // [mm above bottom dead centre, deg of crank, kN rated, deg at which that holds]
    // tools; step: the stroke that loads them most
    tool_strength,  // no steel is named
    tool_sections,  // none can be cut
    tool_rating,
    tool_tension,        // [mm thick, x, y, MPa allowed, safety, mm that would be sufficient]
    tool_compression,    // as tension
    tool_line_load,      // [Vickers, kN per m from, to]
    tool_contact,        // [mm of radius, x, y, Vickers, 1: all that the strip bears, mm of radius needed]
    side_thrust,         // step [1: pushes the punch to the right, -1: to the left; kN; what holds it]
    tilting,             // how far beside the middle [mm wide, N m; what holds it]
    spring_shear,        // [mm of wire; the wire's name]
    spring_slenderness,  // [mm long, mm of coil]
    spring_room,         // [how many, mm of pad, mm along the bend line]
    spring_length,       // mm along the bend line that the springs need [how many, mm in diameter, mm of pad]
    // remedies
    thicker_section,  // [mm thick, x, y]
    rounder_edge,     // [mm of radius, x, y]
    other_springs     // [how many, mm of wire, mm of coil, turns, mm of travel, rows; the wire's name]
};

enum class On { job, bend, step, cutout, tool };

// What a finding speaks of, and where it is seen; indices into the case's lists, -1 for none.
struct FindingPlace {
    On of = On::job;
    int step = -1, bend = -1, cutout = -1, tool = -1;
    int state = -1;                     // of the step's recording
    std::optional<Eigen::Vector2d> at;  // mm, in the press; none: at the bend
};

struct Finding {
    Severity severity = Severity::note;
    Rule rule = Rule::not_solved;
    double figure = 0.0, limit = 0.0;  // in the rule's unit
    std::vector<double> further = {};  // as the rule has them
    std::string detail = {};
    FindingPlace place = {};  // set by the caller
    std::string source = {};  // whose rule it is, where the rule alone does not tell
    bool succeeded = false;   // geometry alone would stop it, but the simulated stroke succeeded
};

// beyond the limit: stops; beyond `thin` of it: caution; else within. limit > 0, 0 < thin <= 1
inline Severity judged(double figure, double limit, double thin) {
    if (!(figure <= limit)) return Severity::stops;
    return figure > thin * limit ? Severity::caution : Severity::within;
}

}  // namespace overbend
