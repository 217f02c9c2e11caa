// What stands about the tools in the press: holders, ram, bed and gauge, as outlines that the strip must not
// meet.
//
// Units  mm, press coordinates.

#pragma once

#include "scenes/files/case/case.h"
#include "sim/strip/strip_state.h"
#include "sim/tool/tool_set.h"

namespace overbend::job {

// Holders, ram and bed of the case's press, above this punch and below this die as they stand. None without a
// press.
tool::ToolSet press_blocks(const files::Case& c, const tool::RigidTool& punch, const tool::RigidTool& die);

// The gauge, its face against what of the placed strip lies furthest right at its height. None when the press
// has none; or when the strip has no edge there but goes on beyond, below or above it: it would be hit as
// soon as the strip turns.
tool::ToolSet gauge_at(const files::Case& c, const strip::StripState& placed);

// Whether the press has a gauge that does not touch an edge of the placed strip.
bool gauge_finds_no_edge(const files::Case& c, const strip::StripState& placed);

// From the punch's axis to the gauge's face; 0 without a gauge.
double gauge_distance(const tool::ToolSet& tools);

}  // namespace overbend::job
