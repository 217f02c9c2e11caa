#include "sim/plan/stroke_path.h"

#include <algorithm>
#include <cmath>

namespace overbend::plan {

namespace {

using Eigen::Vector2d;

// The arc's centre of a nose whose strip, turned by `turn`, also touches the shoulder: the distance of both
// centres across the strip is the sum of both radii of its mid-line.
double nose_height(const StrokePath& p, double turn) {
    const double apart = p.nose + p.shoulder + p.thickness;
    const double lowest = p.lowest + p.nose;
    if (turn > 1.55) return lowest;  // steeper, the shoulder holds nothing up any more
    const double height = (apart - (p.shoulder_x - p.nose_x) * std::sin(turn)) / std::cos(turn) - p.shoulder;
    return std::max(height, lowest);
}

Frame round_nose(const StrokePath& p, double turn, double height, double s) {
    const double mid = p.nose + 0.5 * p.thickness;
    Frame f;
    f.turn_to(turn);
    f.at = Vector2d(p.nose_x, height) + mid * Vector2d(std::sin(turn), -std::cos(turn)) +
           (1.0 - s) * p.half_allowance * f.along();
    return f;
}

PathPoint between_shoulders(const StrokePath& p, double s) {
    const double turn = s * p.loaded * (p.kind == StrokeKind::vee ? 0.5 : 1.0);
    const double height = nose_height(p, turn);
    PathPoint point;
    point.left = point.right = round_nose(p, turn, height, s);
    point.ram = height - p.nose;
    return point;
}

PathPoint step_down(const StrokePath& p, double s) {
    const double per_radius = std::tan(0.5 * p.loaded);
    const double right = 0.5 * p.run + p.shoulder * per_radius;
    const double left = 0.5 * p.run + (p.clearance + p.nose) * per_radius;
    PathPoint point;
    point.right.at = {right, 0.5 * p.thickness};
    point.left.at = {(1.0 - s) * (p.middle - right) + s * left, 0.5 * p.thickness - s * p.offset};
    point.ram = p.thickness + s * (p.clearance - p.offset - p.thickness);
    return point;
}

PathPoint over_edge(const StrokePath& p, double s) {
    const double turn = s * p.loaded, mid = p.shoulder + 0.5 * p.thickness;
    const Vector2d centre(-p.shoulder, -p.shoulder), normal(std::sin(turn), std::cos(turn));
    PathPoint point;
    point.left.at = {p.shoulder, 0.5 * p.thickness};
    point.right.turn_to(-turn);
    point.right.at = centre + mid * normal + (1.0 - s) * 2.0 * p.half_allowance * point.right.along();
    // the punch's corner on the strip's outer surface
    const double lowest = -p.shoulder - p.nose - 3.0 * p.thickness;
    point.ram = lowest;
    if (turn < 1.55) {
        const double reach = p.shoulder + p.thickness + p.nose + centre.dot(normal);
        point.ram =
            std::max(lowest, (reach - (p.clearance + p.nose) * std::sin(turn)) / std::cos(turn) - p.nose);
    }
    return point;
}

}  // namespace

PathPoint at(const StrokePath& path, double s) {
    switch (path.kind) {
        case StrokeKind::offset:
            return step_down(path, s);
        case StrokeKind::wiping:
            return over_edge(path, s);
        case StrokeKind::vee:
        case StrokeKind::channel:
            break;
    }
    return between_shoulders(path, s);
}

double free_at(const StrokePath& path) {
    return path.free / path.loaded;
}

double arm(const StrokePath& path, double s) {
    const PathPoint point = at(path, s);
    const Frame& f = point.right;
    switch (path.kind) {
        case StrokeKind::offset:
            return 0.0;
        case StrokeKind::wiping:
            return std::max(
                0.0, (Vector2d(path.clearance + path.nose, point.ram + path.nose) - f.at).dot(f.along()));
        case StrokeKind::vee:
        case StrokeKind::channel:
            break;
    }
    return std::max(0.0, (Vector2d(path.shoulder_x, -path.shoulder) - f.at).dot(f.along()));
}

double needed_straight(const StrokePath& path) {
    if (path.kind == StrokeKind::offset || path.kind == StrokeKind::wiping) return 2.0 * path.thickness;
    double most = 0.0;
    for (int i = 0; i <= 16; ++i) {
        const double s = i / 16.0;
        // a wall that stands upright leans on the shoulder no more
        if (at(path, s).right.turn() < 1.5) most = std::max(most, arm(path, s));
    }
    return most;
}

PathSpeed fastest(const StrokePath& path) {
    constexpr int samples = 48;
    constexpr double safety = 1.15;  // between the samples
    PathSpeed speed;
    PathPoint last = at(path, 0.0);
    for (int i = 1; i <= samples; ++i) {
        const PathPoint now = at(path, static_cast<double>(i) / samples);
        const double shift =
            std::max((now.left.at - last.left.at).norm(), (now.right.at - last.right.at).norm());
        const double turn = std::max(std::abs(now.left.turn() - last.left.turn()),
                                     std::abs(now.right.turn() - last.right.turn()));
        speed.shift = std::max(speed.shift, safety * samples * shift);
        speed.turn = std::max(speed.turn, safety * samples * turn);
        speed.ram = std::max(speed.ram, safety * samples * std::abs(now.ram - last.ram));
        last = now;
    }
    return speed;
}

}  // namespace overbend::plan
