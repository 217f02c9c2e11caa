// Makers of dies. Own coordinates: the middle of the groove at x = 0, the top face at y = 0, the block below.
//
// Units  mm, rad. Every maker throws OutOfRange, with the reason, for a shape that cannot be.

#pragma once

#include <vector>

#include "sim/tool/arc_outline.h"

namespace overbend::tool {

// One groove of a V die.
struct VeeFace {
    double angle = 0.0;            // rad, included angle of the flanks, 0 < angle < pi
    double die_opening = 0.0;      // between the shoulder arcs' centres (which is between the points where
                                   // the arcs meet the top face), > 0
    double shoulder_radius = 0.0;  // > 0
    double bottom_radius = 0.0;    // of the groove's bottom, >= 0
};

// A V die with one groove on each of one or two faces. A two-way die is one block with two grooves, turned
// over between strokes; each face is made as it stands when it is up, the other groove hanging below.
struct VeeDie {
    std::vector<VeeFace> faces;  // one or two; the first is face 1
    double width = 0.0;          // of the block, > opening + 2 shoulder radii
    double height = 0.0;         // of the block, more than the depths of its grooves
};
// face: 1 or 2, the one that is up.
ArcOutline make_outline(const VeeDie& die, int face);

// How deep a groove is, from the top face to the bottom of its rounded bottom. mm
double groove_depth(const VeeFace& face);

// Two shoulders with parallel walls below and no floor that the strip can reach: air bending alone.
struct OpenDie {
    double die_opening = 0.0;      // between the shoulder arcs' centres
    double shoulder_radius = 0.0;  // > 0
    double depth = 0.0;            // of the slot, > shoulder_radius
    double width = 0.0;            // of the block
};
ArcOutline make_outline(const OpenDie& die);

// The lower half of an offset pair; see OffsetPunch. Its high land lies right with its face at y = 0, its low
// land left at y = -offset; x = 0 is the middle of the sloped face (of its sharp corners).
struct OffsetDie {
    double offset = 0.0;           // > 0
    double angle = 0.0;            // rad, bend angle, 0 < angle <= pi/2
    double shoulder_radius = 0.0;  // convex corner of the high land, >= 0
    double root_radius = 0.0;      // concave corner at the low land, >= 0
    double land = 0.0;             // length of each land beyond its corner, > 0
    double height = 0.0;           // of the body below the low land, > 0
};
ArcOutline make_outline(const OffsetDie& die);

// A channel with a floor.
struct ChannelDie {
    double die_opening = 0.0;      // between the walls, > 0
    double shoulder_radius = 0.0;  // > 0; here the opening is between the walls, the arcs begin outside it
    double depth = 0.0;            // from the top face to the floor, > shoulder_radius
    double floor_crown = 0.0;      // the floor's middle stands so much higher than its edges, >= 0
    double width = 0.0;            // of the block
    double height = 0.0;           // of the block, > depth
};
ArcOutline make_outline(const ChannelDie& die);

// Whether a punch and a die can work on a strip of this thickness: the nose fits into the groove with the
// strip around it; the wedge is not wider than the groove's angle; the channel has at least one thickness on
// either side of the foot; the offset pair matches. Throws OutOfRange with the figures and what would fit.
struct VeePunch;
struct OffsetPunch;
struct ChannelPunch;
void check_pair(const VeePunch& punch, const VeeFace& face, double thickness);
void check_pair(const OffsetPunch& punch, const OffsetDie& die, double thickness);
void check_pair(const ChannelPunch& punch, const ChannelDie& die, double thickness);

}  // namespace overbend::tool
