// Laying the strip in and taking it away, in the plane of the picture.
//
// The operator stands left. The strip is brought in flat over the die with the ram up, and let down on to it;
// then the punch comes down to it. After the stroke the punch goes up, and the strip is drawn off the gauge,
// lifted, tilted if that helps, and drawn back to the left. What cannot go that way still goes along the bend
// line, sideways: the state in which it lies, or hangs on the punch, is free of everything.
//
// Units  mm.

#pragma once

#include "sim/clearance/least_distance.h"

namespace overbend::clearance {

// How the strip gets to its place in the press, or off it: in the picture's plane, or towards the viewer.
enum class Way { in_the_plane, along_the_bend_line };

struct Access {
    bool in_plane_in = true;   // false: the strip has to be slid in along the bend line, the punch being down
    bool in_plane_out = true;  // false: it has to be slid off along the bend line
    int blocked_in_by = -1, blocked_out_by = -1;  // the first tool in the way, of the recording's; -1: none
};

// raised: how far the ram goes up from the first touch and from the stop, mm, > 0.
Access access_of(const Surroundings& surroundings, double raised);

}  // namespace overbend::clearance
