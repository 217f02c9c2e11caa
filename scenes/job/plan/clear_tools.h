// Tools that get out of the way: where a search ended, what stands in the way of each bend that is left, and
// the tool of other sizes that does not. A punch is relieved as far as the strip reaches into it through the
// whole stroke; a block is made narrower, or its groove, for a flange that it hits or that is too short for
// it; tools are made higher where the strip meets what holds them.
//
// Units  mm, rad.

#pragma once

#include "scenes/files/case/work.h"
#include "scenes/job/plan/attempt.h"
#include "scenes/job/plan/vee_trials.h"

namespace overbend::job {

// Nothing: there is no such tool that the case does not have.
files::ProposedTools clear_tools(Attempt& attempt, VeeTrials& trials);

// A relief on this side that keeps `room` from all of these places, seen from the punch's nose; nothing: none
// of them is within `room` of the punch, or no such punch can be made.
// neck: the least that is left behind the cut.
std::optional<tool::VeePunch> relieved(const tool::VeePunch& punch, tool::Side side,
                                       const std::vector<Eigen::Vector2d>& places, double room, double neck);

}  // namespace overbend::job
