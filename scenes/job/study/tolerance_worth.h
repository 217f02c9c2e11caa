// Which tolerance is worth buying: what share of the parts would be good, and what a good part would cost, if
// one factor varied half as far about its mean. No run is needed: each sample counts as often as it would
// turn up then, density over density (importance weights).
//
// Cost   of a good part: the cost of a part over the share that is good; a bad one is thrown away.

#pragma once

#include "scenes/job/study/scatter.h"

namespace overbend::job {

struct ToleranceWorth {
    int factor = 0;
    Share good;             // with half the scatter
    double samples = 0.0;   // as many as that interval stands on: the effective number
    double per_part = 0.0;  // that may be paid for it, for each part made; 0: costs are not known
};

// One a factor that varies on its own, by its columns.
// cost: of a part, good or bad; 0: not known
std::vector<ToleranceWorth> tolerance_worth(const StudyPlan& plan, const std::vector<StudyRow>& rows,
                                            double cost);

}  // namespace overbend::job
