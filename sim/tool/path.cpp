// From points with corner radii and bulges to an outline; declared in arc_outline.h.

#include <algorithm>
#include <cmath>

#include "sim/errors.h"
#include "sim/tool/arc_outline.h"
#include "sim/tool/figures.h"
#include "sim/tool/vectors.h"

namespace overbend::tool {

namespace {

constexpr double slack = 1e-9;  // mm, rounding of radii that use up a side

// "corner 3 at (1, 2) mm", counted from 1.
std::string corner(const std::vector<PathPoint>& points, std::size_t i) {
    return "corner " + std::to_string(i + 1) + " at " + place(points[i].at);
}

// The path with what a corner's rounding needs: entry i belongs to point i, or to the side after it.
struct Path {
    const std::vector<PathPoint>& points;
    std::vector<Vec2> direction;   // unit, of the chord of the side
    std::vector<double> length;    // mm, of that chord
    std::vector<double> tan_half;  // tangent of half the turn at the point, >= 0; 0 where nothing is rounded
    std::size_t size() const { return points.size(); }
    std::size_t before(std::size_t i) const { return (i + size() - 1) % size(); }
    std::size_t after(std::size_t i) const { return (i + 1) % size(); }
    // how much of each side beside it the corner's arc takes, mm
    double trim(std::size_t i) const { return points[i].radius * tan_half[i]; }
};

void check_points(const std::vector<PathPoint>& points) {
    bool bulged = false;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const PathPoint& point = points[i];
        if (!point.at.allFinite() || !std::isfinite(point.bulge)) {
            throw OutOfRange("corner " + std::to_string(i + 1), "a coordinate or bulge is not a number",
                             "use finite numbers");
        }
        require_not_negative(("radius of " + corner(points, i)).c_str(), point.radius);
        bulged = bulged || point.bulge != 0.0;
    }
    const std::size_t least = bulged ? 2 : 3;
    if (points.size() >= least) return;
    throw OutOfRange("outline", std::to_string(points.size()) + " corners do not enclose an area",
                     "give at least three, or two with an arc between them");
}

Path measured(const std::vector<PathPoint>& points) {
    Path path{points, {}, {}, std::vector<double>(points.size(), 0.0)};
    for (std::size_t i = 0; i < points.size(); ++i) {
        const Vec2 chord = points[path.after(i)].at - points[i].at;
        if (chord.norm() <= slack) {
            throw OutOfRange(corner(points, i), "the next corner is at the same place", "remove one of them");
        }
        path.length.push_back(chord.norm());
        path.direction.push_back(chord / chord.norm());
    }
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (points[i].radius == 0.0) continue;
        if (points[i].bulge != 0.0 || points[path.before(i)].bulge != 0.0) {
            throw OutOfRange("radius of " + corner(points, i), "it is at the end of an arc",
                             "round only corners between lines, or give the rounding as a separate bulge");
        }
        const Vec2& in = path.direction[path.before(i)];
        const Vec2& out = path.direction[i];
        const double one_and_cos = 1.0 + in.dot(out);
        if (one_and_cos < 1e-12) {
            throw OutOfRange(corner(points, i), "the path doubles back there",
                             "leave an angle between the sides");
        }
        path.tan_half[i] = std::abs(cross(in, out)) / one_and_cos;
    }
    return path;
}

// What the neighbour leaves of the side between it and the corner; half the side where it leaves nothing.
double room(const Path& path, std::size_t side, std::size_t neighbour) {
    const double left = path.length[side] - path.trim(neighbour);
    return left > 0.0 ? left : 0.5 * path.length[side];
}

void check_radii(const Path& path) {
    for (std::size_t i = 0; i < path.size(); ++i) {
        const std::size_t j = path.after(i);
        if (path.trim(i) + path.trim(j) <= path.length[i] + slack) continue;
        const std::size_t worse = path.trim(i) >= path.trim(j) ? i : j;
        const double fits = std::min(room(path, worse, path.after(worse)),
                                     room(path, path.before(worse), path.before(worse))) /
                            path.tan_half[worse];
        throw OutOfRange("radius of " + corner(path.points, worse),
                         mm(path.points[worse].radius) + " is too large for the sides beside it",
                         "at most " + mm(fits) + " fits");
    }
}

Piece line(const Vec2& start, const Vec2& end) {
    Piece piece;
    piece.start = start;
    piece.end = end;
    return piece;
}

Piece arc(const Vec2& start, const Vec2& end, double bulge) {
    Piece piece = line(start, end);
    const Vec2 chord = end - start;
    piece.radius = chord.norm() * (1.0 + bulge * bulge) / (4.0 * std::abs(bulge));
    piece.centre = 0.5 * (start + end) + left_of(chord) * ((1.0 - bulge * bulge) / (4.0 * bulge));
    piece.sweep = 4.0 * std::atan(bulge);
    return piece;
}

Piece corner_arc(const Path& path, std::size_t i) {
    const Vec2& in = path.direction[path.before(i)];
    const Vec2& out = path.direction[i];
    const PathPoint& point = path.points[i];
    Piece piece = line(point.at - path.trim(i) * in, point.at + path.trim(i) * out);
    piece.radius = point.radius;
    piece.sweep = std::atan2(cross(in, out), in.dot(out));
    // from both ends, so that a symmetrical corner has its centre on its axis to the last bit
    const double side = piece.sweep > 0.0 ? point.radius : -point.radius;
    piece.centre = 0.5 * ((piece.start + side * left_of(in)) + (piece.end + side * left_of(out)));
    return piece;
}

}  // namespace

ArcOutline from_points(const std::vector<PathPoint>& points) {
    check_points(points);
    const Path path = measured(points);
    check_radii(path);

    std::vector<Piece> pieces;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const std::size_t j = path.after(i);
        // a corner that hardly turns stays a joint of two lines
        if (path.trim(i) > slack) pieces.push_back(corner_arc(path, i));
        const double trim = path.trim(i) > slack ? path.trim(i) : 0.0;
        const double next_trim = path.trim(j) > slack ? path.trim(j) : 0.0;
        const Vec2 start = points[i].at + trim * path.direction[i];
        const Vec2 end = points[j].at - next_trim * path.direction[i];
        pieces.push_back(points[i].bulge == 0.0 ? line(start, end) : arc(start, end, points[i].bulge));
    }
    return ArcOutline(std::move(pieces));
}

ArcOutline round_corners(const std::vector<Corner>& corners) {
    std::vector<PathPoint> points;
    points.reserve(corners.size());
    for (const Corner& given : corners) points.push_back({given.at, given.radius, 0.0});
    return from_points(points);
}

}  // namespace overbend::tool
