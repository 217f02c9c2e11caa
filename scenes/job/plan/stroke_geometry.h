// A case's drawing as geometry, for the search of the order.
//
// Units  mm, rad.

#pragma once

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"
#include "sim/plan/folded_part.h"

namespace overbend::job {

// The case's blank, with the springback of each bend by rule: calculated once for all strokes of the search.
Blank planning_blank(const files::Case& c);

// The drawing on its blank.
plan::FoldedPart folded_part(const files::Case& c, const Blank& blank);

}  // namespace overbend::job
