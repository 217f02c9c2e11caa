// Least distance of the strip from the tools, away from where they press it.
//
// In the forming zone the tools press the strip; anywhere else a touch is an interference, but for the top
// face of the die, on which the strip lies, and of pads and clamps: over half its width on either side of the
// zone such a tool is not looked at. Distances are exact against the outlines' lines and arcs; the strip's
// surfaces are sampled at most half a thickness apart.
//
// Units  mm.

#pragma once

#include <vector>

#include "sim/stroke/recording.h"
#include "sim/stroke/stroke_scene.h"

namespace overbend::clearance {

struct Closest {
    double distance = 1e300;  // < 0: depth of an overlap; 1e300 when all of the strip lies in the zone
    Eigen::Vector2d at = Eigen::Vector2d::Zero();  // on the strip's surface
    double blank_position = 0.0;
    int tool = -1;   // index into the recording's tools
    int state = -1;  // index into the recording's states
};

// One state.
Closest least_distance(const stroke::Recording& recording, int state, const stroke::FormingZone& zone);

// Every state in turn.
std::vector<Closest> least_distances(const stroke::Recording& recording, const stroke::FormingZone& zone);

}  // namespace overbend::clearance
