#include "sim/tool/crossing.h"

#include <cmath>

#include "sim/tool/vectors.h"

namespace overbend::tool {

namespace {

constexpr double touch = 1e-10;        // mm, ends nearer than this to a piece touch it
constexpr double at_joint = 1e-7;      // mm, rounding of a computed crossing at a shared joint
constexpr double least_slope = 1e-12;  // sine of the angle below which two lines pass for parallel

// Whether a point that lies on the piece's line or circle lies on the piece.
bool within(const Piece& piece, const Vec2& point) {
    if ((point - piece.start).norm() < touch || (point - piece.end).norm() < touch) return true;
    if (!piece.is_arc()) {
        const double along = piece.direction.dot(point - piece.start);
        return along >= 0.0 && along <= piece.length;
    }
    return piece.direction.dot(point - piece.centre) >= piece.cos_half_sweep * piece.radius;
}

bool is_on(const Piece& piece, const Vec2& point) {
    const double off = piece.is_arc() ? (point - piece.centre).norm() - piece.radius
                                      : cross(piece.direction, point - piece.start);
    return std::abs(off) < touch && within(piece, point);
}

void meet_lines(const Piece& a, const Piece& b, std::vector<Vec2>& found) {
    const double slope = cross(a.direction, b.direction);
    if (std::abs(slope) < least_slope) return;
    found.push_back(a.start + a.direction * (cross(b.start - a.start, b.direction) / slope));
}

void meet_line_and_circle(const Piece& line, const Piece& arc, std::vector<Vec2>& found) {
    const double along = line.direction.dot(arc.centre - line.start);
    const Vec2 middle = line.start + line.direction * along;
    const double half_squared = arc.radius * arc.radius - (middle - arc.centre).squaredNorm();
    if (half_squared < 0.0) return;
    const Vec2 half = line.direction * std::sqrt(half_squared);
    found.push_back(middle - half);
    found.push_back(middle + half);
}

void meet_circles(const Piece& a, const Piece& b, std::vector<Vec2>& found) {
    const Vec2 between = b.centre - a.centre;
    const double apart = between.norm();
    if (apart < touch) return;  // one about the other: apart, or on each other
    const Vec2 axis = between / apart;
    const double along = 0.5 * (apart + (a.radius - b.radius) * (a.radius + b.radius) / apart);
    const double half_squared = a.radius * a.radius - along * along;
    if (half_squared < 0.0) return;
    const Vec2 middle = a.centre + axis * along;
    const Vec2 half = Vec2(-axis.y(), axis.x()) * std::sqrt(half_squared);
    found.push_back(middle - half);
    found.push_back(middle + half);
}

}  // namespace

std::optional<Vec2> common_point(const Piece& a, const Piece& b, const std::vector<Vec2>& but_not) {
    std::vector<Vec2> candidates;
    if (a.is_arc() && b.is_arc()) {
        meet_circles(a, b, candidates);
    } else if (a.is_arc()) {
        meet_line_and_circle(b, a, candidates);
    } else if (b.is_arc()) {
        meet_line_and_circle(a, b, candidates);
    } else {
        meet_lines(a, b, candidates);
    }

    std::vector<Vec2> shared;
    for (const Vec2& point : candidates) {
        if (within(a, point) && within(b, point)) shared.push_back(point);
    }
    for (const Vec2& end : {a.start, a.end}) {
        if (is_on(b, end)) shared.push_back(end);
    }
    for (const Vec2& end : {b.start, b.end}) {
        if (is_on(a, end)) shared.push_back(end);
    }

    for (const Vec2& point : shared) {
        bool allowed = false;
        for (const Vec2& joint : but_not) allowed = allowed || (point - joint).norm() < at_joint;
        if (!allowed) return point;
    }
    return std::nullopt;
}

}  // namespace overbend::tool
