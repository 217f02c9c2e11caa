// Tools that make two neighbouring bends in one stroke: an offset pair, or a foot with its channel and a pad.
//
// Units  mm, rad.

#pragma once

#include "scenes/job/plan/propose_vee.h"

namespace overbend::job {

// For two neighbours of opposite sense and the same angle. The step of the tools is less than the drawing's,
// since they stay open by a little at the stop; the run through the mechanics sets it right (see
// tool_overbend.h).
ProposedTools propose_offset(const files::Case& c, const Blank& blank, int left_bend);

// For two neighbours of like sense and 90 degrees. Where a wall ends in a flange bent inwards, over the
// mouth, the foot is lower than that flange and its shank stands to the other side, which makes an L of it;
// cannot says so when both walls have one and no shank fits between. A pad keeps the floor flat.
ProposedTools propose_channel(const files::Case& c, int left_bend);

}  // namespace overbend::job
