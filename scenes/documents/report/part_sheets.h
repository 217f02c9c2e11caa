// What the drawings of a part show: its flat pattern, and its finished profile over the drawing's.

#pragma once

#include "render/picture/flat_drawing.h"
#include "render/picture/profile_drawing.h"
#include "scenes/job/run/flat_pattern.h"

namespace overbend::documents {

picture::FlatSheet pattern_sheet(const files::Case& c, const job::FlatPattern& pattern);

// In one line: where the bend lines come from.
const char* how_found(const job::FlatPattern& pattern);

// Of a job that came to its end.
picture::ProfileSheet profile_sheet(const files::Case& c, const job::JobResult& job);

// What the rules say of the flat blank: of a bend or a cut-out, not of a stroke.
job::Findings cautions_of(const job::FlatPattern& pattern);

}  // namespace overbend::documents
