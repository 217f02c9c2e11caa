// Keeps states of a stroke as it goes.

#pragma once

#include "sim/stroke/recording.h"
#include "sim/stroke/solver_state.h"

namespace overbend::stroke {

// A recording without states yet.
Recording begin_recording(const strip::StripState& strip, const tool::ToolSet& tools);

// Adds the solver's state to the recording.
void record(Recording& recording, const SolverState& state, Phase phase);

}  // namespace overbend::stroke
