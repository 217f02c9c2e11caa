// Where to set each stop for most good parts.
//
// The ram of each step is moved by so much that most samples would be within: each sample's sizes move by
// what a change of the stop does on the nominal strip (held_stops.h), in a straight line. What is not good
// for another reason than a size stays so. First the mean of every judged size is brought to the drawing's by
// least squares over the tolerances; then one stop after the other is moved while that makes more parts good.
//
// Holds   for small moves: a study with these stops ([[set]] in its file) shows what they really do.
// Units   mm.

#pragma once

#include "scenes/job/study/scatter.h"

namespace overbend::job {

struct StopAdvice {
    std::vector<double> deeper;  // one a step, beyond what is set
    Share now, then;             // good parts: of the samples, and as foreseen
};

// sensitivity: as stop_sensitivity of the same held stops has it.
StopAdvice advise_stops(const StudyPlan& plan, const HeldStops& held, const std::vector<StudySize>& sizes,
                        const std::vector<StudyRow>& rows,
                        const std::vector<std::vector<double>>& sensitivity);

}  // namespace overbend::job
