// The two corners that an offset punch and its die have in common, and their check. For sim/tool only.
//
// Units  mm, rad.

#pragma once

namespace overbend::tool {

// Two parallel lands a step apart, joined by a sloped face between a convex and a concave corner.
struct OffsetCorners {
    double offset = 0.0;           // > 0
    double angle = 0.0;            // rad, of the sloped face against the lands
    const char* convex_name = "";  // what its radius is called on this tool
    double convex_radius = 0.0;
    const char* concave_name = "";
    double concave_radius = 0.0;
    double land = 0.0;  // of each land from its sharp corner, > 0
};

// Throws OutOfRange: angle not within (0, 90 deg], a radius below 0, the two arcs longer than the sloped face
// or than a land.
void check_corners(const OffsetCorners& corners);

// How far the sloped face runs along the lands, between its sharp corners.
double run(const OffsetCorners& corners);

}  // namespace overbend::tool
