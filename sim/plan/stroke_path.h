// How the two halves of the strip and the punch move through a stroke, by geometry alone: the halves are
// rigid and touch nose and shoulders. For planning, where thousands of strokes are looked at; the mechanics
// has the last word.
//
// Units  mm, rad. Press coordinates: the punch's axis is x = 0, the die's top face y = 0.

#pragma once

#include "sim/plan/folded_part.h"

namespace overbend::plan {

enum class StrokeKind { vee, channel, offset, wiping };

struct StrokePath {
    StrokeKind kind = StrokeKind::vee;
    double thickness = 0.0;
    double loaded = 0.0;          // bend angle under the punch, > 0
    double free = 0.0;            // after release, 0 < free <= loaded
    double half_allowance = 0.0;  // half the blank that goes into the (left) bend
    double nose = 0.0;        // radius of the punch's nose; of a foot's corners; of an offset punch's edge;
                              // of a wiping punch's corner
    double nose_x = 0.0;      // how far right of the axis its arc has its centre; 0 for a V
    double shoulder = 0.0;    // radius of the die's shoulder; of the edge that is wiped over
    double shoulder_x = 0.0;  // of its arc's centre; unused for an offset and wiping (whose wall is x = 0)
    double lowest = -1e300;   // the punch's lowest point goes no deeper
    double offset = 0.0, run = 0.0;  // of an offset: the step, and the sloped face's run along the lands
    double clearance = 0.0;          // of an offset: between the closed faces; of wiping: beside the wall
    double middle = 0.0;             // of an offset: blank between its two flats
};

// An instant of the stroke.
struct PathPoint {
    Frame left, right;  // where the sides begin (see Side); the left one in the mirror
    double ram = 0.0;   // height of the punch's origin
};

// s = 0: as placed, the punch touching; 1: under the punch at the stop.
PathPoint at(const StrokePath& path, double s);
// The s at which the strip has the angle that it keeps.
double free_at(const StrokePath& path);

// The strip's free length at s, from the bend's end to where the shoulder touches it; for wiping, to where
// the punch's corner does; 0 for an offset.
double arm(const StrokePath& path, double s);

// How long the strip must be straight from the bend's end outwards, so that it lies on both shoulders from
// the first touch to the stop.
double needed_straight(const StrokePath& path);

// Bounds over the stroke, per unit of s: how fast a side's beginning moves, turns, and how fast the ram goes.
struct PathSpeed {
    double shift = 0.0, turn = 0.0, ram = 0.0;
};
PathSpeed fastest(const StrokePath& path);

}  // namespace overbend::plan
