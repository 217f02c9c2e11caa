// Lines and arcs in any order and sense, joined to one closed outline.
//
// Ends within a millionth of a mm are one. What is open then is joined to the nearest open end within the
// tolerance: a line's end goes to the arc's, two lines or two arcs meet half-way, an arc keeps its sweep.
// Ends that are one within 1e-9 mm stay as they are, so that what was written comes back.
//
// Units  mm.

#pragma once

#include <vector>

#include "scenes/files/dxf/read_dxf.h"

namespace overbend::files {

constexpr double usual_gap = 0.01;  // mm

// gap: mm, >= 0. The pieces in turn, each ending where the next begins; in either sense.
// Throws DxfError: a gap (where, and how wide), more than two ends at one place, more than one outline.
std::vector<tool::Piece> chained(const std::vector<DxfPiece>& pieces, double gap);

}  // namespace overbend::files
