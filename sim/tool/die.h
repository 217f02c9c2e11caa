// Makers of dies. Own coordinates: the middle of the groove at x = 0, the top face at y = 0, the block below.
//
// Units  mm, rad. Every maker throws OutOfRange, with the reason, for a shape that cannot be.

#pragma once

#include <vector>

#include "sim/tool/arc_outline.h"

namespace overbend::tool {

// One groove of a V die. Each shoulder arc is tangent to the top face and to its flank, the bottom arc to
// both flanks; so it must be that (shoulder_radius + bottom_radius) cos(angle / 2) <= die_opening / 2.
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
    double height = 0.0;         // of the block, more than the depth of its groove; with two grooves at least
                                 // a quarter of it is left between them
};
// Mirror-symmetric about x = 0 whichever face is up.
// face: 1 or 2, the one that is up.
ArcOutline make_outline(const VeeDie& die, int face);

// From where a shoulder's flank meets the top face, both prolonged past the arc, to the arc's centre, along
// the face. mm
// angle: rad, included, of the groove; 0 for upright walls
double corner_to_centre(double shoulder_radius, double angle);

// How deep a groove is, from the top face to the bottom of its rounded bottom. mm
double groove_depth(const VeeFace& face);

// Two shoulders with parallel walls below and no floor that the strip can reach: air bending alone.
struct OpenDie {
    double die_opening = 0.0;      // between the shoulder arcs' centres
    double shoulder_radius = 0.0;  // > 0
    double depth = 0.0;            // of the slot, > shoulder_radius
    double width = 0.0;            // of the block, > opening + 2 shoulder radii
};
// The walls stand at x = +-(die_opening / 2 - shoulder_radius). The block reaches a quarter of the slot's
// depth below its floor.
ArcOutline make_outline(const OpenDie& die);

// The lower half of an offset pair; see OffsetPunch. Its high land lies right with its face at y = 0, its low
// land left at y = -offset; x = 0 is the middle of the sloped face (of its sharp corners).
struct OffsetDie {
    double offset = 0.0;           // > 0
    double angle = 0.0;            // rad, bend angle, 0 < angle <= pi/2
    double shoulder_radius = 0.0;  // convex corner of the high land, >= 0
    double root_radius = 0.0;      // concave corner at the low land, >= 0
    double land = 0.0;             // length of each land beyond its sharp corner, > radius tan(angle / 2)
    double height = 0.0;           // of the body below the low land, > 0
};
ArcOutline make_outline(const OffsetDie& die);

// A channel with a floor.
struct ChannelDie {
    double die_opening = 0.0;      // between the walls, > 0
    double shoulder_radius = 0.0;  // > 0; here the opening is between the walls, the arcs begin outside it
    double depth = 0.0;            // from the top face to the floor's edges, > shoulder_radius
    double floor_crown = 0.0;  // the floor's middle stands so much higher than its edges (an arc), >= 0, less
                               // than depth - shoulder_radius and at most half the opening
    double width = 0.0;        // of the block, > opening + 2 shoulder radii
    double height = 0.0;       // of the block, > depth
};
ArcOutline make_outline(const ChannelDie& die);

struct VeePunch;
struct OffsetPunch;
struct ChannelPunch;

// The largest bend angle, in rad, to which a punch can press a strip into a groove. It ends where the strip
// lies on the flanks (pi - face.angle) or, before that, where it is pinched between the nose and the
// shoulders: with r = nose_radius + thickness the strip's outer radius about the nose, the strip touches the
// shoulder arc in the line of both centres, which leans by asin(die_opening / 2 / (r + shoulder_radius)) from
// the vertical.
double largest_bend_angle(const VeePunch& punch, const VeeFace& face, double thickness);

// Whether a punch and a die can work on a strip of this thickness (mm, > 0); both must be shapes that can be.
// What cannot be pressed at all is refused, what is merely bad practice is not. Throws OutOfRange with the
// figures and what would fit.
//
// V: the wedge's angle is at most the groove's (or its flanks would land on the shoulders); and the nose with
// the strip round it goes in between the shoulders, 2 (nose_radius + thickness) <= die_opening, unless the
// groove is so flat that the strip lies on its flanks first, (nose_radius + thickness + shoulder_radius)
// cos(face.angle / 2) <= die_opening / 2.
void check_pair(const VeePunch& punch, const VeeFace& face, double thickness);
// Offset: the same angle within 0.01 deg and the same offset within 1e-6 mm; nowhere less than a thickness
// between the closed faces: clearance >= thickness, and at the corners, where the gap is least on the
// bisector if a concave arc is larger than the convex one and the clearance together: root_radius of the one
// <= radius of the other's convex corner + (clearance - thickness cos(angle / 2)) / (1 - cos(angle / 2)).
void check_pair(const OffsetPunch& punch, const OffsetDie& die, double thickness);
// Channel: at least one thickness on either side of the foot, die_opening - width >= 2 thickness.
void check_pair(const ChannelPunch& punch, const ChannelDie& die, double thickness);

}  // namespace overbend::tool
