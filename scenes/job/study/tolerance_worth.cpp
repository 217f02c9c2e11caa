#include "scenes/job/study/tolerance_worth.h"

#include "scenes/job/study/distribution.h"

namespace overbend::job {

namespace {

// How much oftener the value turns up with half the scatter.
double oftener(const files::Distribution& spread, double value) {
    const double mean = mean_of(spread), now = density(spread, value);
    return now > 0.0 ? 2.0 * density(spread, mean + 2.0 * (value - mean)) / now : 0.0;
}

}  // namespace

std::vector<ToleranceWorth> tolerance_worth(const StudyPlan& plan, const std::vector<StudyRow>& rows,
                                            double cost) {
    std::vector<ToleranceWorth> worth;
    const std::vector<const StudyRow*> samples = sample_rows(plan, rows);
    double good = 0.0;
    for (const StudyRow* row : samples) good += row->good ? 1.0 : 0.0;
    const double now = samples.empty() ? 0.0 : good / static_cast<double>(samples.size());
    for (std::size_t f = 0; f < plan.factors.size(); ++f) {
        if (plan.factors[f].correlated) continue;
        double all = 0.0, squares = 0.0, weighed_good = 0.0;
        for (const StudyRow* row : samples) {
            double weight = 1.0;
            for (const int c : plan.factors[f].columns) {
                const auto column = static_cast<std::size_t>(c);
                weight *= oftener(plan.columns[column].spread, row->values[column]);
            }
            all += weight, squares += weight * weight;
            if (row->good) weighed_good += weight;
        }
        if (!(all > 0.0)) continue;
        ToleranceWorth w;
        w.factor = static_cast<int>(f);
        w.samples = all * all / squares;
        w.good = share_of(w.samples * weighed_good / all, w.samples);
        // (cost + x) / share then = cost / share now
        if (now > 0.0) w.per_part = cost * (w.good.value / now - 1.0);
        worth.push_back(w);
    }
    return worth;
}

}  // namespace overbend::job
