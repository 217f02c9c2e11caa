#include "tests/outside/shape_figures.h"

#include <algorithm>
#include <cmath>

#include "sim/tool/signed_distance.h"
#include "sim/units.h"

namespace overbend::tests {

namespace {

// Length of a surface between two blank positions.
double arc_of(const BentShape& s, double side, double from, double to) {
    double sum = 0.0;
    Place last = s.surface(from, side);
    const auto go = [&](const Place& next) {
        sum += (next - last).norm();
        last = next;
    };
    for (std::size_t i = 0; i < s.blank.size(); ++i)
        if (s.blank[i] > from && s.blank[i] < to) go(side > 0.0 ? s.upper[i] : s.lower[i]);
    go(s.surface(to, side));
    return sum;
}

}  // namespace

BendFigures bend_figures(const BentShape& strip, double from, double to, double thickness) {
    BendFigures f;
    const double turn = strip.turn_at(to) - strip.turn_at(from), inner = strip.inner_side(from, to);
    const double stretch = 0.5 * thickness;
    f.turn = std::abs(turn) / degree;
    constexpr int places = 4000;
    for (int i = 0; i <= places; ++i) {
        const double a = from + (to - from - stretch) * i / places;
        const double curvature = inner * (strip.turn_at(a + stretch) - strip.turn_at(a)) / stretch;
        if (curvature > f.curvature) f.curvature = curvature, f.sharpest = a + 0.5 * stretch;
    }
    const double a = f.sharpest - 0.5 * stretch, b = f.sharpest + 0.5 * stretch;
    f.inside_radius = arc_of(strip, inner, a, b) / (f.curvature * stretch);
    f.outer_strain = std::log(arc_of(strip, -inner, a, b) / stretch);
    f.thickness = strip.thickness(f.sharpest);
    f.radius_30 = job::arc_radius(strip, from, to, thickness, 30.0 * degree);
    f.radius_60 = job::arc_radius(strip, from, to, thickness, 60.0 * degree);
    return f;
}

double lift_off(const BentShape& strip, double side, const tool::ArcOutline& tool, const Place& tool_position,
                double from, double to) {
    std::vector<double> distance;
    std::size_t first = 0, last = 0;
    for (std::size_t i = 0; i < strip.blank.size(); ++i) {
        if (strip.blank[i] < from || strip.blank[i] > to) continue;
        const Place at = side > 0.0 ? strip.upper[i] : strip.lower[i];
        distance.push_back(tool::nearest(tool, at - tool_position).distance);
        if (distance.back() > 0.0) continue;
        last = distance.size();
        if (first == 0) first = last;
    }
    if (first == last) return 0.0;
    return std::max(0.0, *std::max_element(distance.begin() + first - 1, distance.begin() + last));
}

double tension(const stroke::Recording& recording, const stroke::State& state, double position) {
    const std::vector<double>& places = recording.blank_position;
    const auto beyond = std::upper_bound(places.begin() + 1, places.end() - 1, position);
    const auto e = static_cast<std::size_t>(beyond - places.begin() - 1);
    const std::size_t layers = recording.layers();
    const double G = state.stretch[e], k = state.curvature[e];
    double sum = 0.0;
    for (std::size_t i = 0; i < layers; ++i)
        sum += recording.layer_weight[i] * state.hoop_stress[e * layers + i] * G /
               (G * G - 2.0 * recording.layer_height[i] * k);
    return sum;
}

}  // namespace overbend::tests
