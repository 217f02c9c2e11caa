// Of the pairs of V tools that can make a bend those that make its radius: within the tolerance of the
// drawing, by single strokes of the mechanics; where none does, those that come nearest.
//
// Units  mm.

#pragma once

#include <vector>

#include "scenes/job/plan/vee_trials.h"
#include "sim/plan/bend_order.h"

namespace overbend::job {

// possible: strokes, see Choices. Those of other tools are kept as they are, and all where so many different
// tools can make a bend that trying them would take too long.
// but_for: bends that any pair may make.
std::vector<files::Step> suited_pairs(const files::Case& c, const std::vector<files::Step>& possible,
                                      plan::BendSet but_for, VeeTrials& trials);

}  // namespace overbend::job
