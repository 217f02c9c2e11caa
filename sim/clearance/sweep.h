// What the strip hits between two recorded states, so that nothing thin passes through it unseen.
//
// Between the states each piece is taken to move straight from where it was to where it is, and the tool with
// the ram. By conservative advancement: a piece that is further away, in either state, than it moves against
// the tool cannot have met it; else the way is halved until that is so, or a hit is found.
//
// Units  mm.

#pragma once

#include <vector>

#include "sim/clearance/least_distance.h"

namespace overbend::clearance {

// Hits that neither of the states before and after shows, in the order they come.
std::vector<Closest> hits_between(const Surroundings& surroundings, const stroke::FormingZone& zone);

}  // namespace overbend::clearance
