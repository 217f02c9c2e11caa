// What a step's strip comes near to, hits, and how it gets in and out.

#pragma once

#include "scenes/job/run/process.h"

namespace overbend::job {

// Fills clearance, least, interferences and remarks of a step that was pressed.
// raised: how far the ram goes up, mm.
void read_clearance(const stroke::FormingZone& zone, double raised, StepResult& result);

// The height to which a case's ram goes up.
double ram_rise(const files::Case& c);

}  // namespace overbend::job
