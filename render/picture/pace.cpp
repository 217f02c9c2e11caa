#include "render/picture/pace.h"

#include <algorithm>
#include <cmath>

namespace overbend::picture {

namespace {

double greatest_shift(const stroke::State& a, const stroke::State& b) {
    double greatest = 0.0;
    for (std::size_t i = 0; i < a.x.size(); ++i)
        greatest = std::max(greatest, std::hypot(b.x[i] - a.x[i], b.y[i] - a.y[i]));
    return greatest;
}

}  // namespace

double eased(double part) {
    const double p = std::clamp(part, 0.0, 1.0);
    return p * p * (3.0 - 2.0 * p);
}

std::vector<double> way_between(const stroke::Recording& recording, int first, int last, double by_travel,
                                double by_shift) {
    std::vector<double> way{0.0};
    for (int i = first; i < last; ++i) {
        const stroke::State &a = recording.states[i], &b = recording.states[i + 1];
        way.push_back(way.back() + by_travel * std::abs(b.travel - a.travel) +
                      by_shift * greatest_shift(a, b) + 1e-12);
    }
    return way;
}

}  // namespace overbend::picture
