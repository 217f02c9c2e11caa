#include "sim/tool/signed_distance.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace overbend::tool {

namespace {

constexpr double least_distance = 1e-9;  // mm, nearer to a tip or a centre no direction can be told

// Where on a piece its nearest point lies.
enum class On { inner, start, end };

struct Found {
    double squared = std::numeric_limits<double>::infinity();  // distance squared, mm2
    int piece = 0;
    On on = On::inner;
};

double cross(const Vec2& a, const Vec2& b) {
    return a.x() * b.y() - a.y() * b.x();
}

// Takes the nearer end of a piece if that beats what was found.
void take_end(const Piece& piece, int index, const Vec2& point, Found& best) {
    const double to_start = (point - piece.start).squaredNorm();
    const double to_end = (point - piece.end).squaredNorm();
    const double nearer = std::min(to_start, to_end);
    if (nearer < best.squared) best = {nearer, index, to_start <= to_end ? On::start : On::end};
}

void take_line(const Piece& line, int index, const Vec2& point, Found& best) {
    const Vec2 from_start = point - line.start;
    const double across = cross(line.direction, from_start);
    const double squared = across * across;
    if (squared >= best.squared) return;
    const double along = line.direction.dot(from_start);
    if (along >= 0.0 && along <= line.length) {
        best = {squared, index, On::inner};
    } else {
        take_end(line, index, point, best);
    }
}

// Whether a point at this place from the centre lies in the arc's sector, by squares alone.
bool in_sector(const Piece& arc, double along_middle, double squared) {
    const double edge = arc.cos_half_sweep * arc.cos_half_sweep * squared;
    const double here = along_middle * along_middle;
    if (arc.cos_half_sweep >= 0.0) return along_middle >= 0.0 && here >= edge;
    return along_middle >= 0.0 || here <= edge;
}

void take_arc(const Piece& arc, int index, const Vec2& point, Found& best) {
    const Vec2 from_centre = point - arc.centre;
    const double squared = from_centre.squaredNorm();
    if (!in_sector(arc, arc.direction.dot(from_centre), squared)) {
        take_end(arc, index, point, best);
        return;
    }
    const double off = std::sqrt(squared) - arc.radius;
    if (off * off < best.squared) best = {off * off, index, On::inner};
}

void take(const Piece& piece, int index, const Vec2& point, Found& best) {
    if (piece.is_arc()) {
        take_arc(piece, index, point, best);
    } else {
        take_line(piece, index, point, best);
    }
}

// 1/distance, held to a size that can be used in sums.
double held_inverse(double distance) {
    return 1.0 / std::max(distance, least_distance);
}

double arc_curvature(const Piece& arc, const Vec2& point) {
    const double inverse = held_inverse((point - arc.centre).norm());
    return arc.sweep > 0.0 ? inverse : -inverse;
}

Nearest on_line(const Piece& line, int index, const Vec2& point) {
    Nearest result;
    result.piece = index;
    result.normal = Vec2(line.direction.y(), -line.direction.x());
    result.distance = result.normal.dot(point - line.start);
    result.foot = point - result.distance * result.normal;
    return result;
}

Nearest on_arc(const Piece& arc, int index, const Vec2& point) {
    const Vec2 from_centre = point - arc.centre;
    const double from = from_centre.norm();
    const Vec2 radial = from > least_distance ? Vec2(from_centre / from) : arc.direction;
    const double sense = arc.sweep > 0.0 ? 1.0 : -1.0;
    Nearest result;
    result.piece = index;
    result.normal = sense * radial;
    result.distance = sense * (from - arc.radius);
    result.curvature = sense * held_inverse(from);
    result.foot = arc.centre + arc.radius * radial;
    return result;
}

Nearest at_joint(const Piece& piece, const Joint& joint, const Vec2& foot, int index, const Vec2& point) {
    const Vec2 from_foot = point - foot;
    const double apart = from_foot.norm();
    const double sign = from_foot.dot(joint.normal) >= 0.0 ? 1.0 : -1.0;
    Nearest result;
    result.piece = index;
    result.foot = foot;
    result.distance = sign * apart;
    result.normal = joint.normal;
    if (joint.turn == Turn::smooth) {
        result.distance = from_foot.dot(joint.normal);
        if (piece.is_arc()) result.curvature = arc_curvature(piece, point);
        return result;
    }
    if (apart > least_distance) result.normal = from_foot * (sign / apart);
    result.curvature = sign * held_inverse(apart);
    return result;
}

Nearest describe(const ArcOutline& outline, const Found& best, const Vec2& point) {
    const Piece& piece = outline.pieces()[best.piece];
    switch (best.on) {
        case On::start:
            return at_joint(piece, outline.joints()[best.piece], piece.start, best.piece, point);
        case On::end: {
            const std::size_t next = static_cast<std::size_t>(best.piece) + 1;
            const Joint& joint = outline.joints()[next == outline.pieces().size() ? 0 : next];
            return at_joint(piece, joint, piece.end, best.piece, point);
        }
        case On::inner:
            break;
    }
    return piece.is_arc() ? on_arc(piece, best.piece, point) : on_line(piece, best.piece, point);
}

}  // namespace

Nearest nearest(const ArcOutline& outline, const Vec2& point) {
    Found best;
    const int count = static_cast<int>(outline.pieces().size());
    for (int i = 0; i < count; ++i) take(outline.pieces()[i], i, point, best);
    return describe(outline, best, point);
}

Nearest nearest(const ArcOutline& outline, const std::vector<int>& subset, const Vec2& point) {
    assert(!subset.empty());
    Found best;
    for (const int i : subset) take(outline.pieces()[i], i, point, best);
    return describe(outline, best, point);
}

void pieces_within(const ArcOutline& outline, const Vec2& point, double reach, std::vector<int>& found) {
    found.clear();
    const int count = static_cast<int>(outline.pieces().size());
    for (int i = 0; i < count; ++i) {
        Found here;
        take(outline.pieces()[i], i, point, here);
        if (here.squared <= reach * reach) found.push_back(i);
    }
}

}  // namespace overbend::tool
