#include "sim/tensile/yield_point.h"

#include <algorithm>
#include <cmath>

namespace overbend::tensile {

namespace {

constexpr double latest = 0.05;  // strain, of an upper yield

// Means over so many points either side: the scatter is less, and a plateau is not moved.
std::vector<double> smoothed(const std::vector<double>& values, std::size_t either_side) {
    std::vector<double> means(values.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
        const std::size_t from = i - std::min(i, either_side),
                          to = std::min(values.size() - 1, i + either_side);
        double sum = 0.0;
        for (std::size_t k = from; k <= to; ++k) sum += values[k];
        means[i] = sum / static_cast<double>(to - from + 1);
    }
    return means;
}

}  // namespace

std::optional<YieldPoint> find_yield_point(const Record& r, double slope) {
    // Early points may scatter more: of a dense record fewer are gathered to one.
    std::vector<double> early;
    for (std::size_t i = 0; i < r.size(); ++i)
        if (r.strain[i] > 0.0 && r.strain[i] < 0.02) early.push_back(r.stress[i]);
    const double scatter = std::max(scatter_of(r.stress), scatter_of(early));
    const std::size_t top = greatest_stress(r);

    // The greatest stress before the first drop.
    std::size_t upper = 0, drop = 0;
    for (std::size_t i = 0; i + 1 < r.size() && r.strain[i] < latest; ++i) {
        if (r.stress[i] > r.stress[upper]) upper = i;
        const double most = r.stress[upper];
        // The mean of the next points: one that scatters is no drop.
        double next = 0.0;
        const std::size_t to = std::min(r.size(), i + 6);
        for (std::size_t k = i + 1; k < to; ++k) next += r.stress[k] / static_cast<double>(to - i - 1);
        if (upper == i && r.stress[i + 1] > most) continue;
        if (most > 0.3 * r.stress[top] && next < most - std::max(0.005 * most, 5.0 * scatter)) {
            drop = i + 1;
            break;
        }
    }
    if (drop == 0 || r.strain[upper] > latest) return std::nullopt;
    // A drop in the elastic part is one of a loading cycle.
    if (r.strain[upper] - r.stress[upper] / slope < -1e-4 || r.stress[drop] / slope > r.strain[drop]) {
        return std::nullopt;
    }

    // The level: the lower half of what lies between the drop and where the stress is over the upper yield,
    // or over the lowest by 3 per cent.
    const std::vector<double> even = smoothed(r.stress, 2);
    double lowest = 1e300;
    std::size_t end = drop;
    for (std::size_t i = drop; i < r.size(); ++i) {
        if (even[i] > std::max(1.03 * lowest, lowest + 6.0 * scatter)) break;
        if (even[i] < 0.9 * lowest && i > drop + 4) break;  // necking or a fracture
        lowest = std::min(lowest, even[i]);
        end = i;
    }
    if (end + 1 >= r.size() || end < drop + 3) return std::nullopt;
    std::vector<double> zone(even.begin() + drop, even.begin() + end + 1);
    std::sort(zone.begin(), zone.end());
    const double level = zone[zone.size() / 4];
    const double leaves = level + std::max(0.01 * level, 2.0 * scatter);
    std::size_t last = drop;
    for (std::size_t i = drop; i <= end; ++i)
        if (even[i] <= leaves) last = i;
    // It hardens afterwards: else this was the greatest load, and the drop is necking.
    if (*std::max_element(even.begin() + last, even.end()) < level + 4.0 * std::max(scatter, 0.0025 * level))
        return std::nullopt;

    YieldPoint y;
    y.upper = {r.stress[upper], 2.0 * scatter};
    // The first of the points beyond the drop are the transient.
    const std::size_t settled = std::min(last, drop + std::max<std::size_t>(1, (last - drop) / 10));
    y.lower = {*std::min_element(even.begin() + settled, even.begin() + last + 1), 2.0 * scatter};
    y.level = level;
    y.last_strain = r.strain[last];
    const double begun = r.strain[upper] - r.stress[upper] / slope;
    const double hardening_gap = r.strain[std::min(r.size() - 1, last + 2)] - r.strain[last];
    y.elongation = {r.strain[last] - r.stress[last] / slope - begun, std::max(hardening_gap, 5e-4)};
    return y;
}

}  // namespace overbend::tensile
