// The shop rules applied to a case: to its drawing, its blank and its V strokes.
//
// Before the strokes are run, radii and angles under load are the drawing's and estimates; afterwards they
// are the simulated ones. Where a stroke came to its stop without touching anything, what geometry alone
// would call impossible is a caution: the simulation has the last word.

#pragma once

#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"
#include "scenes/job/run/process.h"

namespace overbend::job {

// steps  as they were run, in the case's order and as many as were; empty: none yet. Rules that could not be
//        asked are among what is returned.
Findings job_rules(const files::Case& c, const Blank& blank, const std::vector<StepResult>& steps);

// The bend that a cut-out comes nearest to, for the rule.
struct NearestBend {
    int bend = -1;
    double edge_to_bend =
        0.0;             // mm, from its nearest edge to where the bend begins, along the blank; below 0
                         // it reaches into the bend
    double least = 0.0;  // by the rule
};
// mm of straight side that a slot has along the bend lines; 0: a hole, or a slot along the strip.
double side_along_bend(const files::Cutout& cutout);
NearestBend nearest_bend(const files::Case& c, const Blank& blank, const files::Cutout& cutout);

}  // namespace overbend::job
