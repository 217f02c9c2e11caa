// What is read off the shape of a bent strip: turn, radii, curvature, thickness, strain, lift-off of a tool.
//
// All figures are measured on the two surfaces and on the turn of the sections, in the same way for a strip
// of the program and for a finite-element strip; none is worked out of the section's formulas.
//
// Units  mm, degrees, 1/mm.

#pragma once

#include "scenes/job/run/bent_strip.h"
#include "sim/stroke/recording.h"

namespace overbend::tests {

using job::Place;
using BentShape = job::BentStrip;

// A bend between two blank positions on the flats either side of it. Over half a thickness means: over the
// stretch of the blank, so long, whose sections turn most.
struct BendFigures {
    double turn = 0.0;           // from one blank position to the other, positive
    double sharpest = 0.0;       // blank position: the middle of that stretch
    double curvature = 0.0;      // turn over blank, mean over that stretch, positive
    double inside_radius = 0.0;  // arc of the inner surface over turn, there
    double thickness = 0.0;      // in its middle
    double outer_strain = 0.0;   // logarithm of arc of the outer surface over blank, there
    double radius_30 = 0.0;  // circle fitted to the inner surface where the mid-line turns over the middle
                             // 30 degrees
    double radius_60 = 0.0;  // and over the middle 60; 0 for a bend that turns less
};
// The inner surface is the upper one of a bend that closes upwards. thickness: of the blank.
BendFigures bend_figures(const BentShape& strip, double from, double to, double thickness);

// Greatest distance of a surface from a tool between the first and the last place where it lies on it, of the
// blank between two positions; 0 where it touches in one stretch or not at all.
double lift_off(const BentShape& strip, double side, const tool::ArcOutline& tool, const Place& tool_position,
                double from, double to);

// Axial force in a section of a recorded state, N per mm of width.
double tension(const stroke::Recording& recording, const stroke::State& state, double position);

}  // namespace overbend::tests
