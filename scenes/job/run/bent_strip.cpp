#include "scenes/job/run/bent_strip.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "sim/material/section_shape.h"
#include "sim/stroke/strip_strains.h"
#include "sim/units.h"

namespace overbend::job {

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

// Direction of the mid-line, rad, over a tenth of a thickness.
double direction(const BentStrip& strip, double position, double thickness) {
    const double half = 0.05 * thickness, begin = strip.blank.front(), end = strip.length();
    const Place along =
        strip.middle(std::min(end, position + half)) - strip.middle(std::max(begin, position - half));
    const double turn = strip.turn_at(position);
    return turn + std::remainder(std::atan2(along.y(), along.x()) - turn, 2.0 * pi);
}

// Of the nodes as they lie in the press, whichever way the blank runs.
struct Nodes {
    double thickness;
    const std::vector<double>&blank, &x, &y, &theta, &warp;
};

BentStrip strip_through(const Nodes& nodes) {
    const int count = static_cast<int>(nodes.x.size());
    constexpr int warps = material::warps;
    std::vector<double> length(count - 1), unknowns;
    for (int e = 0; e + 1 < count; ++e) length[e] = std::abs(nodes.blank[e + 1] - nodes.blank[e]);
    for (int i = 0; i < count; ++i) {
        unknowns.insert(unknowns.end(), {nodes.x[i], nodes.y[i], nodes.theta[i]});
        for (int j = 0; j < warps; ++j)
            unknowns.push_back(nodes.warp.empty() ? 0.0 : nodes.warp[warps * i + j]);
    }
    const material::SectionShape shape(nodes.thickness, {});
    stroke::StripStrains strains;
    stroke::strain_strip(shape, length, unknowns, strains);

    const bool falling = nodes.blank.front() > nodes.blank.back();
    BentStrip strip;
    for (int n = 0; n < count; ++n) {
        const int i = falling ? count - 1 - n : n;
        const Place at(nodes.x[i], nodes.y[i]), normal(-std::sin(nodes.theta[i]), std::cos(nodes.theta[i]));
        const auto face = [&](double side) {
            return Place(at + strains.nodes[i].heights.y(shape.face(side)) * normal);
        };
        strip.blank.push_back(nodes.blank[i]);
        strip.turn.push_back(nodes.theta[i] + (falling ? pi : 0.0));
        strip.upper.push_back(face(falling ? -1.0 : 1.0));
        strip.lower.push_back(face(falling ? 1.0 : -1.0));
    }
    return strip;
}

}  // namespace

double BentStrip::turn_at(double position) const {
    const auto [i, share] = between(blank, position);
    return (1.0 - share) * turn[i] + share * turn[i + 1];
}

Place BentStrip::surface(double position, double side) const {
    const auto [i, share] = between(blank, position);
    const std::vector<Place>& face = side > 0.0 ? upper : lower;
    return (1.0 - share) * face[i] + share * face[i + 1];
}

Place BentStrip::middle(double position) const {
    return 0.5 * (surface(position, 1.0) + surface(position, -1.0));
}

double BentStrip::thickness(double position) const {
    return (surface(position, 1.0) - surface(position, -1.0)).norm();
}

double BentStrip::inner_side(double from, double to) const {
    return turn_at(to) < turn_at(from) ? -1.0 : 1.0;
}

BentStrip bent_strip(const strip::StripState& s) {
    return strip_through(Nodes{s.thickness, s.blank_position, s.x, s.y, s.theta, s.warp});
}

BentStrip bent_strip(const stroke::Recording& r, const stroke::State& s) {
    return strip_through(Nodes{r.thickness, r.blank_position, s.x, s.y, s.theta, s.warp});
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

double arc_radius(const BentStrip& strip, double from, double to, double thickness, double middle_turn) {
    const double start = strip.turn_at(from), turn = strip.turn_at(to) - start;
    if (std::abs(turn) < middle_turn) return 0.0;
    const double sense = strip.inner_side(from, to);
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

double inside_radius(const BentStrip& strip, double from, double to, double thickness) {
    constexpr double least = 3.0 * degree, most = 60.0 * degree;
    const double turn = std::abs(strip.turn_at(to) - strip.turn_at(from));
    return turn < least ? 0.0 : arc_radius(strip, from, to, thickness, std::min(most, turn * 2.0 / 3.0));
}

}  // namespace overbend::job
