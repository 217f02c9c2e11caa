#include "tests/outside/shape_figures.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "sim/stroke/surface.h"
#include "sim/tool/signed_distance.h"
#include "sim/units.h"

namespace overbend::tests {

namespace {

// Where a position lies among rising places: index of the one before it, and how far on to the next.
struct Between {
    std::size_t index = 0;
    double share = 0.0;
};
Between between(const std::vector<double>& places, double position) {
    const auto above = std::upper_bound(places.begin(), places.end(), position);
    const auto i = std::clamp<std::ptrdiff_t>(above - places.begin() - 1, 0,
                                              static_cast<std::ptrdiff_t>(places.size()) - 2);
    return {static_cast<std::size_t>(i), (position - places[i]) / (places[i + 1] - places[i])};
}

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

// Direction of the mid-line, rad, over a tenth of a thickness.
double direction(const BentShape& strip, double position, double thickness) {
    const double half = 0.05 * thickness, end = strip.length();
    const Place along =
        strip.middle(std::min(end, position + half)) - strip.middle(std::max(0.0, position - half));
    const double turn = strip.turn_at(position);
    return turn + std::remainder(std::atan2(along.y(), along.x()) - turn, 2.0 * pi);
}

// Of the circle through the inner surface where the mid-line turns over the middle of the bend's turn.
double radius_over(const BentShape& strip, double from, double to, double thickness, double middle_turn) {
    const double start = strip.turn_at(from), turn = strip.turn_at(to) - start;
    if (std::abs(turn) < middle_turn) return 0.0;
    const double sense = turn < 0.0 ? -1.0 : 1.0;
    const auto turned_to = [&](double wanted) {  // blank position, found by halving
        double low = from, high = to;
        for (int i = 0; i < 60; ++i) {
            const double at = 0.5 * (low + high);
            (sense * (direction(strip, at, thickness) - start) < wanted ? low : high) = at;
        }
        return 0.5 * (low + high);
    };
    const double low = turned_to(0.5 * (std::abs(turn) - middle_turn));
    const double high = turned_to(0.5 * (std::abs(turn) + middle_turn));
    std::vector<Place> points;
    constexpr int places = 60;
    for (int i = 0; i <= places; ++i) points.push_back(strip.surface(low + (high - low) * i / places, sense));
    return fitted_radius(points);
}

}  // namespace

double BentShape::turn_at(double position) const {
    const auto [i, share] = between(blank, position);
    return (1.0 - share) * turn[i] + share * turn[i + 1];
}

Place BentShape::surface(double position, double side) const {
    const auto [i, share] = between(blank, position);
    const std::vector<Place>& face = side > 0.0 ? upper : lower;
    return (1.0 - share) * face[i] + share * face[i + 1];
}

Place BentShape::middle(double position) const {
    return 0.5 * (surface(position, 1.0) + surface(position, -1.0));
}

double BentShape::thickness(double position) const {
    return (surface(position, 1.0) - surface(position, -1.0)).norm();
}

BentShape bent_shape(const stroke::Recording& recording, const stroke::State& state) {
    const std::vector<double>& blank = recording.blank_position;
    std::vector<double> length, unknowns;
    for (std::size_t i = 0; i < blank.size(); ++i)
        unknowns.insert(unknowns.end(),
                        {state.x[i], state.y[i], state.theta[i], state.warp[2 * i], state.warp[2 * i + 1]});
    for (std::size_t e = 0; e + 1 < blank.size(); ++e) length.push_back(blank[e + 1] - blank[e]);
    const material::SectionShape section({recording.layer_height, recording.layer_weight});
    stroke::StripStrains strains;
    stroke::strain_strip(section, length, unknowns, strains);
    const stroke::SurfaceStrip strip{recording.thickness, &section, &length, &strains};

    BentShape shape;
    constexpr int parts = 8;  // of an element
    const int elements = static_cast<int>(length.size());
    for (int e = 0; e < elements; ++e) {
        const stroke::ElementFace upper = stroke::element_face(strip, e, 1.0),
                                  lower = stroke::element_face(strip, e, -1.0);
        for (int i = 0; i < parts + (e + 1 == elements); ++i) {
            const double share = static_cast<double>(i) / parts, xi = 2.0 * share - 1.0;
            shape.blank.push_back(blank[e] + share * length[e]);
            shape.turn.push_back((1.0 - share) * state.theta[e] + share * state.theta[e + 1]);
            shape.upper.push_back(stroke::surface_point(strip, unknowns, e, upper, xi).at);
            shape.lower.push_back(stroke::surface_point(strip, unknowns, e, lower, xi).at);
        }
    }
    return shape;
}

double fitted_radius(const std::vector<Place>& points) {
    // x^2 + y^2 = 2 a x + 2 b y + c, about the points' mean.
    Place mean = Place::Zero();
    for (const Place& p : points) mean += p / static_cast<double>(points.size());
    Eigen::MatrixX3d A(points.size(), 3);
    Eigen::VectorXd right(points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
        const Place p = points[i] - mean;
        A.row(static_cast<Eigen::Index>(i)) << 2.0 * p.x(), 2.0 * p.y(), 1.0;
        right(static_cast<Eigen::Index>(i)) = p.squaredNorm();
    }
    const Eigen::Vector3d fit = A.colPivHouseholderQr().solve(right);
    return std::sqrt(fit(2) + fit(0) * fit(0) + fit(1) * fit(1));
}

BendFigures bend_figures(const BentShape& strip, double from, double to, double thickness) {
    BendFigures f;
    const double turn = strip.turn_at(to) - strip.turn_at(from), inner = turn < 0.0 ? -1.0 : 1.0;
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
    f.radius_30 = radius_over(strip, from, to, thickness, 30.0 * degree);
    f.radius_60 = radius_over(strip, from, to, thickness, 60.0 * degree);
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
    const std::size_t e = between(recording.blank_position, position).index, layers = recording.layers();
    const double G = state.stretch[e], k = state.curvature[e];
    double sum = 0.0;
    for (std::size_t i = 0; i < layers; ++i)
        sum += recording.layer_weight[i] * state.hoop_stress[e * layers + i] * G /
               (G * G - 2.0 * recording.layer_height[i] * k);
    return sum;
}

}  // namespace overbend::tests
