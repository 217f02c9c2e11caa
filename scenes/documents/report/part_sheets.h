// What the drawings of a part show: its flat pattern, and its finished profile over the drawing's.

#pragma once

#include "render/picture/flat_drawing.h"
#include "render/picture/profile_drawing.h"
#include "scenes/process/flat_pattern.h"

namespace overbend::scenes {

render::FlatSheet pattern_sheet(const Case& c, const FlatPattern& pattern);

// In one line: where the bend lines come from.
const char* how_found(const FlatPattern& pattern);

// Of a job that came to its end.
render::ProfileSheet profile_sheet(const Case& c, const JobResult& job);

// Whether a rule speaks of the flat blank: of a bend or a cut-out, not of a stroke.
bool on_the_blank(const plan::RuleFinding& finding);

}  // namespace overbend::scenes
