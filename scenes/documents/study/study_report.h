// All that a study says, for its tables, JSON and charts.

#pragma once

#include <optional>

#include "scenes/job/study/scatter.h"
#include "scenes/job/study/stop_advice.h"
#include "scenes/job/study/tolerance_worth.h"

namespace overbend::documents {

struct StudyReport {
    const job::StudyPlan* plan = nullptr;
    const job::HeldStops* held = nullptr;
    std::vector<job::StudySize> sizes;
    std::vector<job::StudyRow> rows;  // all, in their order
    job::StudyResult result;
    // Of a study by chance:
    std::optional<job::StopAdvice> stops;
    std::vector<job::ToleranceWorth> worth;
};

StudyReport study_report(const job::StudyPlan& plan, const job::HeldStops& held,
                         std::vector<job::StudySize> sizes, std::vector<job::StudyRow> rows);

}  // namespace overbend::documents
