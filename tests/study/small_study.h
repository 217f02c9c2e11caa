// A V bend of soft steel with a short study of it.

#pragma once

#include "scenes/files/case/read_case.h"
#include "scenes/job/study/study_rows.h"

namespace overbend::tests {

inline files::Case vee_case_of_study() {
    return files::read_case("cases/one-bend-dc01/case.toml");
}

inline files::Study small_study(const files::Case& c, int samples) {
    files::Study study = files::usual_study(c);
    study.samples = samples;
    study.layers = 5, study.elements_per_thickness = 2.0;
    return study;
}

inline std::vector<job::StudyRow> all_rows(const job::StudyPlan& plan, const job::HeldStops& held) {
    std::vector<std::uint64_t> numbers;
    for (std::uint64_t k = 0; k < plan.rows(); ++k) numbers.push_back(k);
    std::vector<job::StudyRow> rows(numbers.size());
    job::run_rows(plan, held, numbers, [&](job::StudyRow row) {
        rows[row.number] = std::move(row);
        return true;
    });
    return rows;
}

// All that a study of few points comes to, worked out once for a file of checks.
struct SmallStudy {
    job::StudyPlan plan;
    job::HeldStops held;
    std::vector<job::StudySize> sizes;
    std::vector<job::StudyRow> rows;
};

inline SmallStudy run_small_study(const files::Case& c, int samples) {
    SmallStudy s;
    s.plan = job::plan_study(c, small_study(c, samples));
    s.held = job::hold_stops(s.plan);
    s.sizes = job::study_sizes(s.held);
    s.rows = all_rows(s.plan, s.held);
    return s;
}

}  // namespace overbend::tests
