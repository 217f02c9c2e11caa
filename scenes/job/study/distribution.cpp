#include "scenes/job/study/distribution.h"

#include <algorithm>
#include <boost/math/special_functions/erf.hpp>
#include <cmath>

#include "sim/units.h"

namespace overbend::job {

namespace {

// Of a density of straight lines: the area up to each point.
std::vector<double> areas(const files::DensityTable& t) {
    std::vector<double> area = {0.0};
    for (std::size_t i = 1; i < t.value.size(); ++i)
        area.push_back(area.back() + 0.5 * (t.density[i] + t.density[i - 1]) * (t.value[i] - t.value[i - 1]));
    return area;
}

double table_quantile(const files::DensityTable& t, double share) {
    const std::vector<double> area = areas(t);
    const double wanted = share * area.back();
    std::size_t i = 1;
    while (i + 1 < area.size() && area[i] < wanted) ++i;
    // a x + slope x^2 / 2 = what is left, in the form that is exact for a slope of 0
    const double left = wanted - area[i - 1], a = t.density[i - 1];
    const double slope = (t.density[i] - a) / (t.value[i] - t.value[i - 1]);
    const double root = std::sqrt(std::max(0.0, a * a + 2.0 * slope * left));
    return t.value[i - 1] + (root + a > 0.0 ? 2.0 * left / (a + root) : 0.0);
}

double table_density(const files::DensityTable& t, double value) {
    for (std::size_t i = 1; i < t.value.size(); ++i) {
        if (value < t.value[i - 1] || value > t.value[i]) continue;
        const double part = (value - t.value[i - 1]) / (t.value[i] - t.value[i - 1]);
        return ((1.0 - part) * t.density[i - 1] + part * t.density[i]) / areas(t).back();
    }
    return 0.0;
}

double normal_density(double z) {
    return std::exp(-0.5 * z * z) / std::sqrt(2.0 * pi);
}

// Share of a normal distribution that lies below the lower end at which it is cut off.
double cut_off(const files::Normal& n) {
    return n.within ? normal_share(-*n.within / n.deviation) : 0.0;
}

}  // namespace

double normal_quantile(double share) {
    return -std::sqrt(2.0) * boost::math::erfc_inv(2.0 * share);
}

double normal_share(double value) {
    return 0.5 * std::erfc(-value / std::sqrt(2.0));
}

double quantile(const files::Distribution& spread, double share) {
    if (const auto* n = std::get_if<files::Normal>(&spread)) {
        const double below = cut_off(*n);
        return n->mean + n->deviation * normal_quantile(below + share * (1.0 - 2.0 * below));
    }
    if (const auto* u = std::get_if<files::Uniform>(&spread)) return u->from + share * (u->to - u->from);
    if (const auto* t = std::get_if<files::Triangular>(&spread)) {
        const double whole = t->to - t->from, rising = (t->peak - t->from) / whole;
        return share < rising ? t->from + std::sqrt(share * whole * (t->peak - t->from))
                              : t->to - std::sqrt((1.0 - share) * whole * (t->to - t->peak));
    }
    return table_quantile(std::get<files::DensityTable>(spread), share);
}

double density(const files::Distribution& spread, double value) {
    if (const auto* n = std::get_if<files::Normal>(&spread)) {
        if (n->within && std::abs(value - n->mean) > *n->within) return 0.0;
        return normal_density((value - n->mean) / n->deviation) / (n->deviation * (1.0 - 2.0 * cut_off(*n)));
    }
    if (const auto* u = std::get_if<files::Uniform>(&spread))
        return value < u->from || value > u->to ? 0.0 : 1.0 / (u->to - u->from);
    if (const auto* t = std::get_if<files::Triangular>(&spread)) {
        if (value < t->from || value > t->to) return 0.0;
        const double whole = t->to - t->from;
        return value < t->peak   ? 2.0 * (value - t->from) / (whole * (t->peak - t->from))
               : t->to > t->peak ? 2.0 * (t->to - value) / (whole * (t->to - t->peak))
                                 : 2.0 / whole;
    }
    return table_density(std::get<files::DensityTable>(spread), value);
}

double mean_of(const files::Distribution& spread) {
    if (const auto* n = std::get_if<files::Normal>(&spread)) return n->mean;
    if (const auto* u = std::get_if<files::Uniform>(&spread)) return 0.5 * (u->from + u->to);
    if (const auto* t = std::get_if<files::Triangular>(&spread)) return (t->from + t->peak + t->to) / 3.0;
    const auto& t = std::get<files::DensityTable>(spread);
    double first = 0.0;
    for (std::size_t i = 1; i < t.value.size(); ++i) {
        const double a = t.value[i - 1], b = t.value[i], p = t.density[i - 1], q = t.density[i];
        first += (b - a) * (p * (2.0 * a + b) + q * (a + 2.0 * b)) / 6.0;
    }
    return first / areas(t).back();
}

}  // namespace overbend::job
