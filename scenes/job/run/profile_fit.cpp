#include "scenes/job/run/profile_fit.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "scenes/job/run/legs.h"
#include "sim/strip/place.h"

namespace overbend::job {

namespace {

using Eigen::Vector2d;

Vector2d turned(const Vector2d& v, double turn) {
    return {std::cos(turn) * v.x() - std::sin(turn) * v.y(), std::sin(turn) * v.x() + std::cos(turn) * v.y()};
}

// ---- the drawing

// Walks the drawing's mid-line from the origin along +x.
struct Walk {
    Vector2d at = Vector2d::Zero();
    double turn = 0.0;
    void straight(double length) { at += length * turned(Vector2d::UnitX(), turn); }
    void arc(double angle, double radius) {
        const double chord = 2.0 * radius * std::sin(0.5 * std::abs(angle));
        at += chord * turned(Vector2d::UnitX(), turn + 0.5 * angle);
        turn += angle;
    }
};

}  // namespace

std::vector<ProfilePoint> drawing_points(const files::Case& c) {
    constexpr int in_bend = 5;
    std::vector<ProfilePoint> points;
    Walk walk;
    for (int i = 0; i < static_cast<int>(c.part.flats.size()); ++i) {
        for (int k = 0; k < 3; ++k) {
            if (k > 0) walk.straight(0.5 * c.part.flats[i]);
            ProfilePoint point;
            point.drawn = walk.at, point.flat = i, point.along = walk.turn;
            points.push_back(point);
        }
        if (i >= static_cast<int>(c.part.bends.size())) continue;
        const files::Bend& bend = c.part.bends[i];
        for (int k = 1; k <= in_bend + 1; ++k) {
            walk.arc(bend.angle / (in_bend + 1), bend.inside_radius + 0.5 * c.thickness);
            if (k > in_bend) continue;
            ProfilePoint point;
            point.drawn = walk.at, point.bend = i, point.along = walk.turn;
            points.push_back(point);
        }
    }
    return points;
}

std::vector<Vector2d> drawing_line(const files::Case& c) {
    constexpr double sag = 0.01;
    std::vector<Vector2d> line = {Vector2d::Zero()};
    Walk walk;
    for (std::size_t i = 0; i < c.part.flats.size(); ++i) {
        walk.straight(c.part.flats[i]);
        line.push_back(walk.at);
        if (i >= c.part.bends.size()) continue;
        const files::Bend& bend = c.part.bends[i];
        const double radius = bend.inside_radius + 0.5 * c.thickness;
        const double step = 2.0 * std::acos(std::max(0.5, 1.0 - sag / radius));
        const int count = std::max(1, static_cast<int>(std::ceil(std::abs(bend.angle) / step)));
        for (int k = 0; k < count; ++k) {
            walk.arc(bend.angle / count, radius);
            line.push_back(walk.at);
        }
    }
    return line;
}

namespace {

// ---- the finished strip

// Where the drawing's flats' ends and middles are on it, in the same order.
std::vector<Vector2d> finished_points(const files::Case& c, const Blank& blank, const strip::StripState& s) {
    std::vector<Vector2d> points;
    for (int i = 0; i < static_cast<int>(c.part.flats.size()); ++i) {
        // From the flat's middle outwards, so that bends with a smaller or larger radius do not count twice.
        const double from = blank.flat_middle(i) - 0.5 * c.part.flats[i], to = from + c.part.flats[i];
        for (const double share : {0.0, 0.5, 1.0}) {
            const strip::MidPoint m =
                strip::mid_point(s, std::clamp(from + share * (to - from), 0.0, blank.length));
            points.emplace_back(m.x, m.y);
        }
    }
    return points;
}

// Its mid-line from the blank's left end, between nodes by the beam's own cubic.
std::vector<Vector2d> finished_line(const Blank& blank, const strip::StripState& s) {
    const double step = 0.1 * s.thickness;
    const int count = std::max(1, static_cast<int>(std::ceil(blank.length / step)));
    std::vector<Vector2d> line;
    for (int i = 0; i <= count; ++i) {
        const strip::MidPoint m = strip::mid_point(s, blank.length * i / count);
        line.emplace_back(m.x, m.y);
    }
    return line;
}

// ---- one over the other

struct Motion {
    Vector2d from = Vector2d::Zero(), to = Vector2d::Zero();
    double turn = 0.0;
    Vector2d operator()(const Vector2d& p) const { return to + turned(p - from, turn); }
};

// The turn and shift of least squares in the plane.
Motion least_squares(const std::vector<Vector2d>& made, const std::vector<Vector2d>& drawn) {
    Motion motion;
    for (std::size_t i = 0; i < drawn.size(); ++i) motion.to += drawn[i], motion.from += made[i];
    motion.to /= static_cast<double>(drawn.size());
    motion.from /= static_cast<double>(made.size());
    double along = 0.0, across = 0.0;
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        const Vector2d a = made[i] - motion.from, b = drawn[i] - motion.to;
        along += a.dot(b);
        across += a.x() * b.y() - a.y() * b.x();
    }
    motion.turn = std::atan2(across, along);
    return motion;
}

Vector2d nearest_on(const std::vector<Vector2d>& line, const Vector2d& p) {
    Vector2d nearest = line.front();
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const Vector2d piece = line[i + 1] - line[i];
        const double length = piece.squaredNorm();
        const double share = length > 0.0 ? std::clamp((p - line[i]).dot(piece) / length, 0.0, 1.0) : 0.0;
        const Vector2d on = line[i] + share * piece;
        if ((on - p).squaredNorm() < (nearest - p).squaredNorm()) nearest = on;
    }
    return nearest;
}

// One step of Gauss and Newton: the finished line turned and shifted so that the flats' points lie on it,
// wherever along it that is; the ends count both ways.
void lay_closer(const std::vector<ProfilePoint>& points, std::vector<Vector2d>& line) {
    Eigen::Matrix3d square = Eigen::Matrix3d::Zero();
    Eigen::Vector3d right = Eigen::Vector3d::Zero();
    const auto want = [&](const Vector2d& drawn, const Vector2d& made, const Vector2d& normal) {
        const Eigen::Vector3d row(normal.dot(Vector2d(-made.y(), made.x())), normal.x(), normal.y());
        square += row * row.transpose();
        right += row * normal.dot(drawn - made);
    };
    for (std::size_t i = 0; i < points.size(); ++i) {
        const ProfilePoint& p = points[i];
        if (p.flat < 0) continue;
        const bool end = i == 0 || i + 1 == points.size();
        const Vector2d made = i == 0 ? line.front() : end ? line.back() : nearest_on(line, p.drawn);
        want(p.drawn, made, turned(Vector2d::UnitY(), p.along));
        if (end) want(p.drawn, made, turned(Vector2d::UnitX(), p.along));
    }
    const Eigen::Vector3d step = square.ldlt().solve(right);
    for (Vector2d& v : line) v = turned(v, step[0]) + Vector2d(step[1], step[2]);
}

}  // namespace

double ProfileFit::greatest() const {
    return std::max(worst_on_flats.off, worst_in_bends.off);
}

ProfileFit fit_profile(const files::Case& c, const Blank& blank, const strip::StripState& finished) {
    const strip::StripState s = as_drawn(finished);
    ProfileFit fit;
    fit.points = drawing_points(c);
    fit.drawn = drawing_line(c);
    std::vector<Vector2d> drawn_flats;
    for (const ProfilePoint& p : fit.points)
        if (p.flat >= 0) drawn_flats.push_back(p.drawn);
    const Motion motion = least_squares(finished_points(c, blank, s), drawn_flats);
    for (const Vector2d& p : finished_line(blank, s)) fit.made.push_back(motion(p));
    constexpr int steps = 6;  // each all but squares what is left of a turn
    for (int i = 0; i < steps; ++i) lay_closer(fit.points, fit.made);

    for (ProfilePoint& p : fit.points) {
        const bool first = &p == &fit.points.front(), last = &p == &fit.points.back();
        p.made = first ? fit.made.front() : last ? fit.made.back() : nearest_on(fit.made, p.drawn);
        p.off = (p.made - p.drawn).norm();
        ProfilePoint& worst = p.flat >= 0 ? fit.worst_on_flats : fit.worst_in_bends;
        if (p.off >= worst.off) worst = p;
    }
    return fit;
}

}  // namespace overbend::job
