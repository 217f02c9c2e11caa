// What stands about the tools in the press: holders, ram, bed and gauge, as outlines that the strip must not
// meet.
//
// Units  mm, press coordinates.

#pragma once

#include "scenes/case/case.h"
#include "sim/strip/strip_state.h"
#include "sim/tool/tool_set.h"

namespace overbend::scenes {

// Holders, ram and bed of the case's press, above this punch and below this die as they stand. None without a
// press.
tool::ToolSet press_blocks(const Case& c, const tool::RigidTool& punch, const tool::RigidTool& die);

// The gauge, its face against what of the placed strip lies furthest right at its height; none when the press
// has none, or the strip is nowhere at its height right of the punch's axis.
tool::ToolSet gauge_at(const Case& c, const strip::StripState& placed);

// From the punch's axis to the gauge's face; 0 without a gauge.
double gauge_distance(const tool::ToolSet& tools);

}  // namespace overbend::scenes
