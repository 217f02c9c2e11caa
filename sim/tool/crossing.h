// Whether two pieces of an outline have a point in common. For the check of an outline, not for speed.
//
// Units  mm.

#pragma once

#include <optional>
#include <vector>

#include "sim/tool/arc_outline.h"

namespace overbend::tool {

// A point that both pieces share (their measures filled in, see Piece), or nothing. Ends that touch the
// other piece within 1e-10 mm count; pieces that lie on each other share an end, so they are found too.
// but_not  joints of the two pieces, at which they may meet: within 1e-7 mm of them nothing counts
std::optional<Vec2> common_point(const Piece& a, const Piece& b, const std::vector<Vec2>& but_not);

}  // namespace overbend::tool
