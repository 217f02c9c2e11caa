// The overbend of formed tools: their own angle, since a stop cannot press further than they close.
//
// Units  mm, rad.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/case.h"

namespace overbend::job {

// Gives the step's tools `missing` (rad, > 0) more overbend and a little on top, when they are among those
// that may be changed: a groove and an offset pair by their angle, a channel by the relief of its foot's
// sides. What was done, in words; empty when nothing can be.
std::string add_overbend(files::Case& c, const files::Step& step, double missing,
                         const std::vector<int>& own_tools);

}  // namespace overbend::job
