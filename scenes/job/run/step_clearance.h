// What a step's strip comes near to, hits, and how it gets in and out.

#pragma once

#include "scenes/job/run/process.h"

namespace overbend::job {

// Fills clearance, least, interferences and ways of a step that was pressed, and says what is found.
// raised: how far the ram goes up, mm.
void read_clearance(const stroke::FormingZone& zone, double raised, int step, StepResult& result,
                    Findings& findings);

// What the person who places the strip must know.
void add_note(Rule rule, const std::string& detail, int step, Findings& findings);

// The height to which a case's ram goes up.
double ram_rise(const files::Case& c);

}  // namespace overbend::job
