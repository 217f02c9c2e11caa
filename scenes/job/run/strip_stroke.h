// What all strokes of one strip without a case have in common: the strip, what its bends are read between,
// and what comes of the stroke. Each kind of stroke stands in a file of its own beside this one.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/material/card.h"
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

// A scene without strip and tools. Throws OutOfRange for a card or options that cannot be.
stroke::StrokeScene begin_scene(const StripOptions& options);

// A flat strip with a mesh for these zones, all of it in the forming zone.
void lay_strip(stroke::StrokeScene& scene, const StripOptions& options, double length,
               const std::vector<strip::FineZone>& zones);

// Its stop is read between the flats of the first bend.
StripStroke finish(stroke::StrokeScene scene, std::vector<BendFlats> bends, double travel_limit);

// Half a blank's length that is bent by an angle round a tool's radius, and a thickness beside it.
double half_core(double radius, double thickness, double angle);

}  // namespace overbend::job
