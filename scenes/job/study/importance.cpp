#include "scenes/job/study/importance.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "scenes/job/study/sobol_points.h"

namespace overbend::job {

namespace {

constexpr int drawn_again = 400;

struct Indices {
    std::vector<double> first, total;
};

// Of some of the points, each as often as it stands there.
Indices indices_of(const std::vector<PointFigures>& points, const std::vector<std::size_t>& which) {
    const std::size_t factors = points.front().size() - 2;
    const double n = static_cast<double>(which.size());
    double mean = 0.0, square = 0.0, apart = 0.0;
    for (const std::size_t i : which) mean += points[i][0] + points[i][1];
    mean /= 2.0 * n;
    Indices sums{std::vector<double>(factors, 0.0), std::vector<double>(factors, 0.0)};
    for (const std::size_t i : which) {
        const PointFigures& p = points[i];
        square += (p[0] - mean) * (p[0] - mean) + (p[1] - mean) * (p[1] - mean);
        apart += (p[1] - p[0]) * (p[1] - p[0]);
        for (std::size_t f = 0; f < factors; ++f) {
            sums.first[f] += (p[1] - p[2 + f]) * (p[1] - p[2 + f]);
            sums.total[f] += (p[0] - p[2 + f]) * (p[0] - p[2 + f]);
        }
    }
    const double variance = square / (2.0 * n);
    for (std::size_t f = 0; f < factors; ++f) {
        sums.first[f] = variance > 0.0 ? (apart - sums.first[f]) / (2.0 * n * variance) : 0.0;
        sums.total[f] = variance > 0.0 ? sums.total[f] / (2.0 * n * variance) : 0.0;
    }
    return sums;
}

void set_interval(std::vector<double> all, Share& share) {
    std::sort(all.begin(), all.end());
    const auto at = [&](double part) {
        return all[static_cast<std::size_t>(part * static_cast<double>(all.size() - 1) + 0.5)];
    };
    share.low = at(0.025), share.high = at(0.975);
}

}  // namespace

std::vector<FactorImportance> importance(const std::vector<PointFigures>& points) {
    if (points.size() < 2 || points.front().size() < 3) return {};
    std::vector<std::size_t> which(points.size());
    double low = 1e300, high = -1e300;
    for (std::size_t i = 0; i < points.size(); ++i) {
        which[i] = i;
        for (const double value : points[i]) low = std::min(low, value), high = std::max(high, value);
    }
    // What differs in rounding alone does not vary.
    if (!(high - low > 1e-9 * std::max(std::abs(low), std::abs(high)))) return {};
    const Indices all = indices_of(points, which);
    const std::size_t factors = all.first.size();
    std::vector<std::vector<double>> first(factors), total(factors);
    std::uint64_t counter = 0;
    for (int again = 0; again < drawn_again; ++again) {
        for (std::size_t& each : which) each = static_cast<std::size_t>(mixed(counter++) % points.size());
        const Indices some = indices_of(points, which);
        for (std::size_t f = 0; f < factors; ++f)
            first[f].push_back(some.first[f]), total[f].push_back(some.total[f]);
    }
    std::vector<FactorImportance> found(factors);
    for (std::size_t f = 0; f < factors; ++f) {
        found[f].first.value = all.first[f], found[f].total.value = all.total[f];
        set_interval(first[f], found[f].first), set_interval(total[f], found[f].total);
    }
    return found;
}

}  // namespace overbend::job
