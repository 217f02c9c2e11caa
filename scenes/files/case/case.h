// A case: the whole job as its file states it, checked, as plain data. Lengths mm, angles rad here (the file
// has degrees), forces kN.

#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "scenes/files/case/kinds.h"
#include "sim/material/card.h"
#include "sim/shop/cost.h"
#include "sim/shop/press_check.h"
#include "sim/shop/tool_steel.h"

namespace overbend::files {

// What a size of the drawing may be off, either way: mm, or rad of an angle.
struct Tolerance {
    std::optional<double> either_way = std::nullopt;  // > 0; none: the part's
    bool reference = false;                           // the size is not judged
};

struct Bend {
    std::string name;            // unique; "bend 1", "bend 2" ... from the left where the file gives none
    double angle = 0.0;          // rad, signed: positive turns the right-hand side up; 0 < |angle| <= pi
    double inside_radius = 0.0;  // mm, of the drawing, >= 0
    Tolerance tolerance = {};    // of the angle
    Tolerance radius_tolerance = {};
};

// The drawing: flats and bends in turn, flats.size() == bends.size() + 1.
struct Part {
    std::vector<double> flats;  // mm, straight lengths between the bends' tangent points, > 0
    std::vector<Bend> bends;
    std::vector<Tolerance> leg_tolerances = {};  // one a flat, of the leg that it is part of; empty: none
                                                 // has its own
    // Of all that have none of their own, either way, > 0; none: as scenes/job/run/measures.h has them.
    std::optional<double> length_tolerance = std::nullopt;   // mm
    std::optional<double> angle_tolerance = std::nullopt;    // rad
    std::optional<double> radius_tolerance = std::nullopt;   // mm
    std::optional<double> profile_tolerance = std::nullopt;  // mm

    Tolerance leg_tolerance(std::size_t flat) const {
        return leg_tolerances.empty() ? Tolerance() : leg_tolerances[flat];
    }
};

// A hole (round) or slot (along the strip or across it, with round ends) in the blank.
struct Cutout {
    double at = 0.0;      // mm from the blank's left end
    double across = 0.0;  // mm from the strip's lower edge in the flat pattern
    double width = 0.0;   // mm, across the strip: diameter of the hole, or what the slot measures that way
    double length = 0.0;  // mm, along the strip; equals width for a hole
    double narrow() const { return std::min(width, length); }     // mm, diameter of the round ends
    double straight() const { return std::abs(length - width); }  // mm, of either side between them
    bool is_slot() const { return straight() > 1e-9; }
};

// What a tool is made of and may be loaded with.
struct ToolMake {
    std::string steel;  // of its card: the name, or the whole path of its file; empty: not given
    std::optional<shop::ToolSteel> card = std::nullopt;  // of that steel
    std::optional<double> rating = std::nullopt;         // kN per m of tool, as its maker states
    std::optional<double> length =
        std::nullopt;  // mm, along the bend line; else a little over the strip's width
    std::optional<double> price = std::nullopt;  // of one that is bought, in the currency of the case's costs
};

struct Tool {
    std::string name;
    ToolShape shape;
    bool from_rack = false;  // of the rack that the case names, not of the case itself
    ToolMake make = {};

    bool is_punch() const { return stands() == Stands::punch || stands() == Stands::punch_or_die; }
    bool is_die() const { return stands() == Stands::die || stands() == Stands::punch_or_die; }
    bool is_pad() const { return stands() == Stands::pad; }
    bool is_clamp() const { return stands() == Stands::clamp; }
    Stands stands() const { return kind_of(shape).stands; }
};

int face_count(const Tool& tool);         // grooves of a V die, each on its own face; 1 of any other tool
const char* kind_word(const Tool& tool);  // as a case file calls it: "vee-punch"
std::string kind_name(const Tool& tool);  // as people do: "V punch"

enum class Face { up, down };      // which face of the blank is on top
enum class First { left, right };  // which end of the blank lies to the left in the press
enum class StopKind { drawing_angle, free_angle, travel, force, gap };
enum class ClampOn { frame, ram };  // where a clamp's spring stands

struct Step {
    std::string name;
    std::vector<int> bends;    // indices into Part::bends, in the order of the blank; 1 or 2
    int punch = 0;             // index into Case::tools
    int die = 0;               // index into Case::tools
    int die_face = 1;          // 1 or 2
    std::optional<int> pad;    // index into Case::tools
    std::optional<int> clamp;  // index into Case::tools
    ClampOn clamp_on = ClampOn::frame;
    Face face = Face::up;
    First first = First::left;
    double shift = 0.0;  // mm, how far the bend line stands right of the punch's axis
    StopKind stop = StopKind::drawing_angle;
    double stop_value = 0.0;  // rad free bend angle (of either sense, > 0), mm travel, kN on the strip's
                              // whole width, or mm between a hem's inner faces; 0 for the drawing's angle

    // All that is set up for it, to be compared.
    auto set_up() const { return std::make_tuple(punch, die, die_face, pad, clamp); }
    // Its tools: punch, die, pad and clamp, those that it has.
    std::vector<int> tools() const;
};

// What stands about the tools in the press, as plain blocks: the holders above the punch and below the die,
// the ram above the one, the bed below the other. Absent: nothing is known to stand there.
struct PressBlock {
    double width = 0.0;   // mm, centred on the punch's axis
    double height = 0.0;  // mm
};

// The finger against which the strip is laid. It stands to the right of the punch, where it touches what of
// the strip lies furthest right at its height.
struct Gauge {
    double height = 0.0;                           // mm, from a thickness below the die's top face up
    double length = 0.0;                           // mm, away from the strip
    double draws_back = 60.0;                      // mm, when the punch has touched the strip; 0: it stays
    std::optional<double> reach = std::nullopt;    // mm, furthest from the punch's axis
    std::optional<double> nearest = std::nullopt;  // mm
};

struct Press {
    std::string title;
    double force = 0.0;   // kN, rated
    double stroke = 0.0;  // mm
    std::optional<PressBlock> punch_holder, die_holder, ram, bed;
    std::optional<Gauge> gauge;
    // What else is known of it; what is not given is not checked. See shop::PressLimits.
    std::optional<double> daylight = std::nullopt;    // mm
    std::optional<double> throat = std::nullopt;      // mm
    std::optional<double> line_load = std::nullopt;   // kN per m
    std::optional<double> off_centre = std::nullopt;  // kN m
    std::optional<double> energy = std::nullopt;      // J
    std::optional<shop::Eccentric> eccentric = std::nullopt;
    std::optional<shop::RamSpeeds> speeds = std::nullopt;
    std::optional<double> price_per_hour = std::nullopt;
    std::optional<double> idle_power = std::nullopt;  // kW
};

// How the strip was cut from the coil: its length along the rolling direction (bend lines across it), or
// across it (bend lines along it).
enum class Rolling { lengthwise, crosswise };

// What an order of strokes costs, in seconds. Defaults: a person at a small press, common practice, no
// source.
struct Handling {
    double stroke = 5.0;         // one stroke: place, press, release
    double turn = 2.0;           // the other end first
    double flip = 2.0;           // the other face up
    double tool_change = 180.0;  // punch or die taken out and another put in, or the block turned over
    double gauge_change = 20.0;  // the gauge set to another distance
    double slide = 4.0;          // the strip slid in or off along the bend line
};

struct RunOptions {
    double friction = 0.1;                // Coulomb, 0 to 0.3
    int layers = 11;                      // through the thickness, 5 to 41
    double elements_per_thickness = 8.0;  // in the bends, 1 to 16
    bool gravity = false;                 // the strip's weight bends it too
};

// Where the strip's card is, for writing the case again.
struct CardOrigin {
    enum class From { assets, file, table };
    From from = From::assets;
    std::string file;  // of a file: its whole path, right from any folder
    // of a table in the case: where single numbers come from, by their key in the file
    std::vector<std::pair<std::string, std::string>> sources;
};

// Of cold-rolled strip, of its thickness, either way: common practice, no source.
constexpr double usual_thickness_tolerance = 0.05;

struct Case {
    std::string file;  // as it was read, for messages
    std::string title;
    material::Card material;
    CardOrigin card_origin;
    double thickness = 0.0;
    std::optional<double> thickness_tolerance;  // mm, either way; usual_thickness_tolerance of it when absent
    double width = 0.0;
    std::optional<double> blank_length;  // mm; worked out from the drawing when absent
    std::vector<double> bend_lines;      // mm from the blank's left end, one a bend; empty: worked out
    Rolling rolling = Rolling::lengthwise;
    Part part;
    std::vector<Cutout> cutouts;
    std::string rack;         // its name, or the whole path of its file; empty: none
    std::vector<Tool> tools;  // the rack's before the case's own
    std::vector<Step> steps;
    std::optional<Press> press;
    std::string press_name;  // of the press's card, or its file's whole path; empty: a table in the case
    std::optional<shop::CostRates> cost;
    Handling handling;
    RunOptions run;
};

}  // namespace overbend::files
