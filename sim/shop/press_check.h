// Whether a press is sufficient for a stroke: its force, the room between ram and bed, its stroke, the load
// on a few millimetres of tool, where the load stands, the gauge's reach, the work and the time it takes.
//
// Units  mm, kN, J, s; a strip's own forces N per mm of width, which is kN per metre.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/finding.h"
#include "sim/units.h"

namespace overbend::shop {

// Speeds of the ram, mm/s, > 0.
struct RamSpeeds {
    double approach = 0.0;    // down to where it slows,
    double pressing = 0.0;    // to the stop,
    double going_back = 0.0;  // and up
    double slow_above = 5.0;  // mm over the first touch where it slows, >= 0
    double dwell = 0.2;       // s, held at the stop
};

// The drive of an eccentric press. Its gears bear a torque, which is used up by the rated force at the rated
// angle of the crank before bottom dead centre; above that the force falls.
struct Eccentric {
    double rated_angle = 30.0 * degree;  // rad, > 0, <= a right angle
};

// The force, kN, of an eccentric press at a height (mm) above bottom dead centre: the rated one times
// sin(rated angle) / sin(angle), at most the rated one. Height = stroke/2 (1 - cos(angle)): the connecting
// rod is taken as long beside the crank, which puts the angle a few degrees too high and the force on the
// safe side.
// Source  torque = force times crank times sin(angle), statics of the slider crank, any handbook of machine
//         elements. Rated at 30 degrees: common practice for small open-front presses, no source.
double crank_angle(double stroke, double height);  // rad, 0 at the bottom
double crank_force(double rated, double stroke, const Eccentric& drive, double height);

// Data of a press; what is absent is not checked.
struct PressLimits {
    double force = 0.0;                   // kN, > 0
    double stroke = 0.0;                  // mm, > 0
    std::optional<double> daylight;       // mm, between bed and ram when the ram is up
    std::optional<double> throat;         // mm, from the punch's axis back to the frame
    std::optional<double> gauge_reach;    // mm, furthest from the punch's axis
    std::optional<double> gauge_nearest;  // mm
    std::optional<double> line_load;      // kN per m of tool, rated load of its holders
    std::optional<double> off_centre;     // kN m, force times its distance from the ram's axis
    std::optional<double> energy;         // J a stroke: of a flywheel
    std::optional<RamSpeeds> speeds;
    std::optional<Eccentric> eccentric;  // none: the rated force holds over the whole stroke
};

// A state of a stroke, the stop taken as bottom dead centre.
struct ForceAt {
    double height = 0.0;  // mm above the stop, >= 0
    double force = 0.0;   // N per mm
};

// What a stroke requires of it, from the simulation.
struct StrokeDemand {
    double strip_width = 0.0;  // mm, > 0
    double peak_force = 0.0;   // N per mm
    double load_centre =
        0.0;  // mm from the punch's axis, where the die's forces have their middle at the peak
    double stop_travel = 0.0;   // mm, from first touch to the stop
    double work = 0.0;          // J, of the stroke
    double tools_closed = 0.0;  // mm from bed to ram at the stop: tools, holders and what lies between
    double part_room = 0.0;     // mm that the punch has to rise over its stop for the strip to come out
    double reach_back = 0.0;    // mm from the punch's axis, how far the strip goes back in any state
    double gauge = 0.0;         // mm from the punch's axis; 0: the strip does not lie against it
    std::optional<double> punch_rating, die_rating;  // kN per m that the tools are rated for
    std::vector<ForceAt> on_the_way;                 // down, for an eccentric press
};

// Who bears the load per metre that the press is rated for.
constexpr const char* holders_words = "the press's holders";

// Of the rated force, kN, what a stroke takes: peak_force N per mm of a strip so wide.
Finding force_check(double rated, double peak_force, double strip_width);

// Every check that applies to this press, passed ones too.
std::vector<Finding> press_checks(const PressLimits& press, const StrokeDemand& stroke);

// Rise of the ram over its stop: what the part needs and a little more, at most the press's stroke.
double ram_rise(const PressLimits& press, const StrokeDemand& stroke);

// Seconds from the ram's start down to its being up again, over the given rise from the stop:
// (rise - slow)/approach + slow/pressing + dwell + rise/back, slow = travel and what lies above it.
double cycle_time(const RamSpeeds& speeds, double rise, double stop_travel);

}  // namespace overbend::shop
