// What the strokes of one strip have in common: the strip, what its bends are read between, and what comes of
// the stroke. The kinds stand in strip_bends.h.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"
#include "sim/strip/mesh.h"
#include "sim/stroke/stroke.h"

namespace overbend::job {

// The strip, and how finely it is computed.
struct StripOptions {
    material::Card material;
    double thickness = 1.0;
    double friction = 0.1;
    std::optional<double> width;  // of the strip; absent: wide, in plane strain
    bool weighs = false;          // gravity pulls at it; the card has to have a density
    int layers = 15;
    double elements_per_thickness = 8.0;
};

// Where a bend is read: between two places of the blank, on the flats either side of it.
struct BendFlats {
    std::string name;
    double sense = 1.0;  // +1 turns the right-hand side up, -1 down
    double left = 0.0;   // blank positions
    double right = 0.0;
};

// A stroke set up: the strip placed between the tools, the stop's flats and its limit of travel. The stop's
// angle is that of the first bend.
struct StripStroke {
    stroke::StrokeScene scene;
    std::vector<BendFlats> bends;  // at least one, from the left
};

// A bend that was made; positive angles are turned through in the bend's sense.
struct BendReading {
    std::string name;
    double loaded = 0.0;
    double free = 0.0;
    double inside_radius_loaded = 0.0;  // least radius of the inner surface, mean over half a thickness; 0:
                                        // flat
    double inside_radius_free = 0.0;
    double springback() const { return loaded - free; }  // positive opens the bend
};

// Another figure that is read off a finished strip.
struct Measure {
    std::string key;    // with its unit, for results: "gap_free_mm"
    std::string words;  // for people: "gap between the faces"
    double value = 0.0;
    std::string unit;
};

struct StripResult {
    stroke::StrokeResult stroke;
    std::vector<BendReading> bends;
    std::vector<Measure> measures;
};

// Presses to the stop: its kind, value and tolerance; a free angle is positive, that of the first bend in its
// sense. The travel is limited by the stop's limit or the stroke's own, whichever is less.
StripResult press_strip(const StripStroke& stroke, const stroke::Stop& stop,
                        const stroke::StrokeOptions& options);

// ---- for the kinds

// A strip that is bent as a case, and what a case leaves open: where its mesh is fine and where its bends are
// read.
struct StripCase {
    files::Case job;
    Blank blank;
    std::vector<strip::FineZone> zones;
    std::vector<double> read_at;  // blank positions, one more than bends; empty: the middles of the flats
};

// A case of the strip alone. Throws OutOfRange for a card or options that cannot be.
StripCase strip_case(const StripOptions& options, double length);

// The next bend from the left, round half_arc either side of its line. angle: signed, the sharpest to think
// of.
void add_bend(StripCase& strip, const char* name, double angle, double bend_line, double half_arc);

// The step of the case that makes all bends with its first two tools, and a third one as pad or clamp.
files::Step only_step(const StripCase& strip);

// Set up as a step of a case is; bent: the strip, when it is not the flat one.
StripStroke set_up(const StripCase& strip, const files::Step& step, const strip::StripState* bent = nullptr);

// Throws OutOfRange for a value that is less than the least.
void at_least(const char* name, double value, double least, const char* wrong, const char* or_else = "");

}  // namespace overbend::job
