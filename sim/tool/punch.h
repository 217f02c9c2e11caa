// Makers of punches. Own coordinates: the lowest point of the working face at y = 0 and its middle at x = 0,
// the shank pointing up (+y), so a punch that presses down works at its bottom.
//
// Units  mm, rad. Every maker throws OutOfRange, with the reason, for a shape that cannot be.

#pragma once

#include <optional>

#include "sim/tool/arc_outline.h"

namespace overbend::tool {

enum class Side { left, right };

// Room cut out of one side of a V punch above its nose (a swan neck), for a flange that was bent before and
// overhangs the bend that is made. Its lower face leads in at 45 degrees from the punch's side, as a return
// flange at 90 degrees comes in; a plane face parallel to the axis follows, then an upper face at 45 degrees
// back out to the shank. Behind the plane face the neck stands out from the shank, where that is too narrow
// for it, and runs back to it at 45 degrees.
struct Relief {
    Side side = Side::right;  // of the punch as it stands in the press
    double from = 0.0;        // where it begins, above the nose's lowest point, > the end of the nose's arc
    double to = 0.0;          // where it ends, < height; from both, the faces at 45 degrees must have room
    double set_back = 0.0;  // of the plane face past the axis, away from the relieved side; < 0: short of it
    double neck = 0.0;      // least thickness behind the plane face, and of what the wedge leaves below
                            // it, > 0; the neck is thicker where the shank's other side is further off
    double root_radius = 0.0;  // of its two inner corners, >= 0
};

// A wedge with a rounded nose, running out into a straight shank.
struct VeePunch {
    double angle = 0.0;        // rad, included angle of the wedge, 0 < angle < pi
    double nose_radius = 0.0;  // > 0, at most half the shank's width; tangent to both flanks
    double height = 0.0;       // from nose to the shank's top, more than the wedge needs to reach its width
    double shank_width = 0.0;  // > 0
    std::optional<Relief> relief = std::nullopt;
};
ArcOutline make_outline(const VeePunch& punch);

// The upper half of an offset pair: it presses both bends of an S in one stroke. Its low land lies left,
// its high land right, joined by a sloped face; see OffsetDie for the lower half. When it is lowered until
// its low land is `clearance` above the die's low land, all faces are `clearance` apart.
// Origin: the low land at y = 0; x = 0 is the middle of the *die's* sloped face, so both tools stand at x =
// 0.
struct OffsetPunch {
    double offset = 0.0;       // step between the lands, > 0
    double angle = 0.0;        // rad, bend angle of the sloped face against the lands, 0 < angle <= pi/2
    double nose_radius = 0.0;  // convex corner of the low land, >= 0
    double root_radius = 0.0;  // concave corner at the high land, >= 0
    double clearance = 0.0;    // gap between the faces when closed, > 0 (at least the strip's thickness)
    double land = 0.0;         // length of each land beyond its sharp corner, > radius tan(angle / 2)
    double height = 0.0;       // body above the high land, > 0
};
ArcOutline make_outline(const OffsetPunch& punch);

// Which side of the foot the shank of a channel punch stands on.
enum class Shank { middle, left, right };

// A flat foot that pushes the strip into a channel, on a shank that may stand to one side (an L-shaped
// punch), so that a flange bent inwards earlier has room on the other.
struct ChannelPunch {
    double width = 0.0;          // of the foot where it is widest, > 0
    double corner_radius = 0.0;  // of the foot's two lower corners, >= 0, at most half the width
    double side_relief = 0.0;    // rad, the foot's sides lean inwards towards the top, 0 <= relief < pi/6
    double foot_height = 0.0;    // > corner_radius (1 + sin(side_relief)), where the corner's arc ends
    double shank_width = 0.0;    // > 0, at most the width of the foot's top (that is width without relief)
    Shank shank = Shank::middle;
    double height = 0.0;  // from the foot's face to the shank's top, > foot_height
};
ArcOutline make_outline(const ChannelPunch& punch);

}  // namespace overbend::tool
