// What a stroke is given: the strip as placed, the tools, and where the punch turns back. Plain data.
//
// Units  mm, rad, MPa, N per mm of strip width. Press coordinates (see sim/tool/tool_set.h).

#pragma once

#include "sim/material/layer_law.h"
#include "sim/strip/strip_state.h"
#include "sim/tool/tool_set.h"

namespace overbend::stroke {

enum class StopKind { travel, force, free_angle };

// Where the punch turns back.
struct Stop {
    StopKind kind = StopKind::travel;
    double value =
        0.0;  // mm, N per mm, or rad as the strip lies (positive: closes upwards, negative: downwards; not 0)
    double left = 0.0;   // blank positions between which the free angle is measured, on the flats either side
    double right = 0.0;  // of the bend; left and right as on the blank
    double tolerance = 2e-5;  // rad, of a free angle; see limits::angle_jump for where it jumps
    double travel_limit =
        1e300;  // mm: further, the tools would meet; the stroke ends there with that outcome
};

// The part of the strip that the tools may press, in blank positions. Outside it a touch is an interference:
// it is measured, not solved.
struct FormingZone {
    double low = -1e300, high = 1e300;
};

struct StrokeScene {
    strip::StripState strip;  // placed: the initial gap above the die
    material::LayerLaw law;
    tool::ToolSet
        tools;  // the punch's position is the one at travel 0, the initial gap above the strip; those
                // that press come first
    double friction = 0.1;
    double weight = 0.0;          // N per mm2 of the strip's face, acts downwards; 0 leaves gravity out
    bool touches_itself = false;  // the strip's own faces may meet, as in a hem
    FormingZone zone;
    Stop stop;
};

}  // namespace overbend::stroke
