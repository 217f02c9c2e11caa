#include "tests/tensile/synthetic.h"

#include <algorithm>
#include <cmath>
#include <random>

#include "sim/material/flow_curve.h"

namespace overbend::tests {

namespace {

struct Point {
    double strain = 0.0, stress = 0.0;  // engineering
    double p = 0.0, true_stress = 0.0;
};

Point point_at(const SyntheticTest& t, double p) {
    Point at;
    at.p = p;
    const double held = t.upper_yield ? std::max(p, t.yield_elongation) : p;
    at.true_stress = material::flow_point(t.law, t.modulus, held).stress;
    const double log_strain = p + at.true_stress / t.modulus;
    at.strain = std::expm1(log_strain);
    at.stress = at.true_stress / (1.0 + at.strain);
    return at;
}

double uniform_p(const SyntheticTest& t) {
    double best = t.yield_elongation, most = point_at(t, best).stress;
    for (double p = t.yield_elongation; p < 0.8; p += 1e-4)
        if (const double s = point_at(t, p).stress; s > most) most = s, best = p;
    return best;
}

}  // namespace

UniformPoint uniform_of(const SyntheticTest& t) {
    const Point top = point_at(t, uniform_p(t));
    return {top.stress, top.strain - top.stress / t.modulus, top.strain};
}

double proof_of(const SyntheticTest& t) {
    double low = 0.0, high = 0.05;
    for (int i = 0; i < 60; ++i) {
        const Point at = point_at(t, 0.5 * (low + high));
        (at.strain - at.stress / t.modulus < 0.002 ? low : high) = 0.5 * (low + high);
    }
    return point_at(t, low).stress;
}

tensile::Record synthetic_record(const SyntheticTest& t) {
    std::vector<Point> points;
    const Point yield = point_at(t, 0.0);
    const double top_of_line = t.upper_yield.value_or(yield.stress);
    for (int i = 0; i < t.elastic_points; ++i) {
        Point at;
        at.stress = top_of_line * i / t.elastic_points;
        at.true_stress = at.stress;
        at.strain = at.stress / t.modulus;
        points.push_back(at);
    }
    if (t.upper_yield) points.push_back({*t.upper_yield / t.modulus, *t.upper_yield, 0.0, *t.upper_yield});
    const double uniform = uniform_p(t), end = t.breaks ? uniform : 0.9 * uniform;
    for (int i = t.upper_yield ? 1 : 0; i <= t.plastic_points; ++i)
        points.push_back(point_at(t, end * i / t.plastic_points));
    // Necking: the load falls along a parabola to 0.8 of the greatest.
    const Point top = points.back();
    const int neck = t.plastic_points / 3;
    for (int i = 1; t.breaks && i <= neck; ++i) {
        const double part = double(i) / neck;
        Point at = top;
        at.strain += 0.4 * (top.strain + 0.05) * part;
        at.stress *= 1.0 - 0.2 * part * part;
        points.push_back(at);
    }

    std::mt19937 random(t.seed);
    std::normal_distribution<double> normal;
    tensile::Record r;
    int line = 2;
    for (int i = 0; t.slack > 0.0 && i < 10; ++i) {
        r.strain.push_back(t.slack * i / 10.0), r.stress.push_back(t.scatter * normal(random));
        r.line.push_back(line++);
        if (t.r_value > 0.0) r.width_strain.push_back(0.0);
    }
    for (const Point& at : points) {
        const double machine = t.machine_slope > 0.0 ? 1.0 / t.machine_slope - 1.0 / t.modulus : 0.0;
        r.strain.push_back(t.slack + at.strain + at.stress * machine + t.strain_scatter * normal(random));
        r.stress.push_back(at.stress + t.scatter * normal(random));
        r.line.push_back(line++);
        if (t.r_value <= 0.0) continue;
        const double elastic = at.true_stress / t.modulus;
        r.width_strain.push_back(std::expm1(-at.p * t.r_value / (1.0 + t.r_value) - 0.3 * elastic) +
                                 1e-5 * normal(random));
    }
    return r;
}

}  // namespace overbend::tests
