#include "scenes/job/study/scatter.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace overbend::job {

namespace {

double at_share(const std::vector<double>& sorted, double share) {
    const double place = share * static_cast<double>(sorted.size() - 1);
    const auto i = static_cast<std::size_t>(place);
    const double part = place - static_cast<double>(i);
    return i + 1 < sorted.size() ? (1.0 - part) * sorted[i] + part * sorted[i + 1] : sorted[i];
}

SizeScatter scatter_of(const StudySize& size, std::vector<double> values) {
    SizeScatter s;
    if (values.empty()) return s;
    const double n = static_cast<double>(values.size());
    for (const double v : values) s.mean += v / n;
    double square = 0.0;
    for (const double v : values) square += (v - s.mean) * (v - s.mean);
    s.deviation = values.size() > 1 ? std::sqrt(square / (n - 1.0)) : 0.0;
    std::sort(values.begin(), values.end());
    s.least = values.front(), s.most = values.back();
    s.low = at_share(values, 0.025), s.middle = at_share(values, 0.5), s.high = at_share(values, 0.975);
    if (!size.judged()) return s;
    const auto in = std::count_if(values.begin(), values.end(),
                                  [&](double v) { return std::abs(v - size.drawn) <= size.allowed + 1e-9; });
    s.within = static_cast<double>(in) / n;
    if (!(s.deviation > 0.0)) return s;
    s.cp = size.allowed / (3.0 * s.deviation);
    s.cpk = (size.allowed - std::abs(s.mean - size.drawn)) / (3.0 * s.deviation);
    return s;
}

// Of the points whose rows were all solved.
std::vector<PointFigures> points_of(const StudyPlan& plan, const std::vector<StudyRow>& rows,
                                    std::size_t size) {
    std::vector<PointFigures> points;
    const auto a_point = static_cast<std::size_t>(plan.rows_a_point());
    for (std::size_t first = 0; first + a_point <= rows.size(); first += a_point) {
        PointFigures figures;
        for (std::size_t i = first; i < first + a_point && rows[i].solved; ++i)
            figures.push_back(rows[i].sizes[size]);
        if (figures.size() == a_point) points.push_back(std::move(figures));
    }
    return points;
}

}  // namespace

Share share_of(double k, double n) {
    if (!(n > 0.0)) return {0.0, 0.0, 1.0};
    constexpr double z = 1.959963985;
    const double p = k / n, below = 1.0 + z * z / n;
    const double middle = (p + 0.5 * z * z / n) / below;
    const double half = z / below * std::sqrt(p * (1.0 - p) / n + 0.25 * z * z / (n * n));
    return {p, std::max(0.0, middle - half), std::min(1.0, middle + half)};
}

std::vector<const StudyRow*> sample_rows(const StudyPlan& plan, const std::vector<StudyRow>& rows) {
    std::vector<const StudyRow*> samples;
    for (const StudyRow& row : rows)
        if (plan.is_grid() || part_of_point(plan, row.number) < 2) samples.push_back(&row);
    return samples;
}

StudyResult study_result(const StudyPlan& plan, const std::vector<StudySize>& sizes,
                         const std::vector<StudyRow>& rows) {
    StudyResult result;
    const std::vector<const StudyRow*> samples = sample_rows(plan, rows);
    result.samples = samples.size();
    double good = 0.0;
    std::map<std::string, std::size_t> why;
    for (const StudyRow* row : samples) {
        good += row->good ? 1.0 : 0.0;
        if (!row->good) ++why[row->why];
    }
    result.good = share_of(good, static_cast<double>(samples.size()));
    result.why.assign(why.begin(), why.end());
    std::stable_sort(result.why.begin(), result.why.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
    result.not_solved = static_cast<std::size_t>(
        std::count_if(rows.begin(), rows.end(), [](const StudyRow& row) { return !row.solved; }));
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        std::vector<double> values;
        for (const StudyRow* row : samples)
            if (row->solved) values.push_back(row->sizes[i]);
        result.sizes.push_back(scatter_of(sizes[i], std::move(values)));
        if (plan.study.importance && !plan.is_grid())
            result.sizes.back().importance = importance(points_of(plan, rows, i));
    }
    return result;
}

}  // namespace overbend::job
