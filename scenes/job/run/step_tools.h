// What the tools of a step are, where they stand, and how they take the strip.
//
// Units  mm, rad.

#pragma once

#include <optional>

#include "scenes/files/case/work.h"
#include "scenes/job/run/drawing.h"
#include "sim/tool/tool_set.h"

namespace overbend::job {

using files::Hold;
Hold hold_of(const files::Case& c, const Blank& blank, const files::Step& step);

// Punch first, then the die, the pad, the clamp; heights are left to stroke::place.
tool::ToolSet tools_of(const files::Case& c, const files::Step& step);

// The nose radius of a tool that has one, mm.
std::optional<double> nose_of(const files::Tool& tool);

}  // namespace overbend::job
