// What differs between two states of a case, in words.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/files/case/told_fields.h"

namespace overbend::files {

// A line for each thing: "stop of step 'hook': 88 deg free -> 90 deg free", "order of steps: lip, tip ->
// tip, lip". Looked at are the strip and its material, the drawing's flats and bends, tools and their sizes,
// steps, the press, handling, costs and the run; any other difference gives one more line. A tool that stands
// for one of the rack (see own_tool) is compared with that. Steps and tools are matched by their names.
std::vector<std::string> case_changes(const Case& from, const Case& to);

// When a step's ram stops: "the drawing's angle", "88 deg free", "3.2 mm of travel", "12 kN", "0.4 mm gap".
std::string stop_words(StopKind kind, double value);

// A tool of the case's own that may be changed: the same index, or, of a tool of the rack, that of a copy at
// the end of the list that stands for it in all steps.
int own_tool(Case& c, int tool);

}  // namespace overbend::files
