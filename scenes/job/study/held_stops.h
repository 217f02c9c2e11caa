// What is set is set once: the stops of a case are solved for the nominal strip, and then held as a press
// holds them, as the ram's height over the die. A thicker strip is met earlier and pressed further; a travel
// from the first touch would hide it.
//
// Units  mm, rad.

#pragma once

#include "scenes/job/shop/shop.h"
#include "scenes/job/study/study_plan.h"

namespace overbend::job {

struct HeldStops {
    files::Case c;  // nominal, with its blank written into it; blanks are cut once too
    std::vector<std::optional<double>> ram_stop;  // one a step; nothing: it stops at a force
    JobResult nominal;                            // without recordings
    double cost_per_part = 0.0;                   // at the case's batch; 0: it has no table of costs
    std::string money;
};

// Throws NotSolved with the reason when a stroke of the nominal strip is not solved.
HeldStops hold_stops(const StudyPlan& plan);

// The nominal strip with the ram of every step set so much deeper, mm; what a change of each stop does.
// sensitivity[size][step]: change of the size (as MeasuredSize::made has it) per mm.
std::vector<std::vector<double>> stop_sensitivity(const HeldStops& held);

// A run of a varied case with its ram where the held stops, and what is set deeper, have it.
// On the nominal blank. Solved: each stop again, as the case has it.
JobResult run_held(const HeldStops& held, const VariedCase& varied, files::Stops stops = files::Stops::held);

}  // namespace overbend::job
