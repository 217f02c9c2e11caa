#include "sim/tensile/true_curve.h"

#include <algorithm>
#include <cmath>

#include "sim/counted.h"

namespace overbend::tensile {

TrueCurve true_curve(const Record& specimen, double modulus, const Figures& figures) {
    struct Point {
        double p = 0.0, stress = 0.0;
    };
    std::vector<Point> points;
    const double first = figures.yield_point ? figures.yield_point->last_strain : 0.0;
    for (std::size_t i = 0; i < specimen.size(); ++i) {
        const double e = specimen.strain[i], stress = specimen.stress[i] * (1.0 + e);
        if (e > figures.uniform_total.value || e <= first || e <= -0.5) continue;
        const double p = std::log1p(e) - stress / modulus;
        if (p >= first_fitted) points.push_back({p, stress});
    }
    if (points.size() < 8)
        throw BadRecord(
            specimen.line[greatest_stress(specimen)],
            "between yield and the greatest load there is only " + counted(points.size(), "point"),
            "give a record with eight points at least there");
    std::stable_sort(points.begin(), points.end(), [](const Point& a, const Point& b) { return a.p < b.p; });
    TrueCurve curve;
    curve.from = points.front().p, curve.to = points.back().p;
    const std::size_t bins = std::min<std::size_t>(most_gathered, std::max<std::size_t>(8, points.size()));
    const bool gathers = points.size() > 2 * most_gathered;
    const double width = (curve.to - curve.from) / static_cast<double>(bins);
    for (std::size_t i = 0; i < points.size();) {
        const double end =
            gathers ? std::floor((points[i].p - curve.from) / width + 1.0) * width + curve.from : 0.0;
        double p = 0.0, stress = 0.0, n = 0.0;
        do p += points[i].p, stress += points[i].stress, n += 1.0, ++i;
        while (i < points.size() && points[i].p < end);
        curve.p.push_back(p / n), curve.stress.push_back(stress / n);
    }
    return curve;
}

}  // namespace overbend::tensile
