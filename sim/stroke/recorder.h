// Keeps states of a stroke as it goes.

#pragma once

#include "sim/stroke/condition.h"
#include "sim/stroke/recording.h"

namespace overbend::stroke {

// A recording without states yet.
Recording begin_recording(const strip::StripState& strip, const tool::ToolSet& tools);

// Adds the condition as a state.
void record(Recording& recording, const Condition& condition, Phase phase);

}  // namespace overbend::stroke
