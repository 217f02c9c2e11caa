#include "sim/tool/signed_distance.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

#include "sim/tool/vectors.h"

namespace overbend::tool {

namespace {

constexpr double least_distance = 1e-9;  // mm, nearer to a tip or a centre the direction is undefined

// Where on a piece its nearest point lies.
enum class On { inner, start, end };

struct Found {
    double squared = std::numeric_limits<double>::infinity();  // distance squared, mm2
    int piece = 0;
    On on = On::inner;
};

// Takes one end of a piece if that beats what was found.
void take_end(const Piece& piece, On end, int index, const Vec2& point, Found& best) {
    const double squared = (point - (end == On::start ? piece.start : piece.end)).squaredNorm();
    if (squared < best.squared) best = {squared, index, end};
}

void take_line(const Piece& line, int index, const Vec2& point, Found& best) {
    const Vec2 from_start = point - line.start;
    const double across = cross(line.direction, from_start);
    const double squared = across * across;
    if (squared >= best.squared) return;
    const double along = line.direction.dot(from_start);
    if (along < 0.0) {
        take_end(line, On::start, index, point, best);
    } else if (along > line.length) {
        take_end(line, On::end, index, point, best);
    } else {
        best = {squared, index, On::inner};
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
        // the middle's direction parts the ends: the nearer one is on the point's side of it
        const bool left_of_middle = cross(arc.direction, from_centre) > 0.0;
        take_end(arc, left_of_middle == (arc.sweep > 0.0) ? On::end : On::start, index, point, best);
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

// The joint at an end of a piece.
const Joint& joint_at(const ArcOutline& outline, int index, On end) {
    if (end == On::start) return outline.joints()[index];
    const std::size_t next = static_cast<std::size_t>(index) + 1;
    return outline.joints()[next == outline.pieces().size() ? 0 : next];
}

Nearest nearest_at_joint(const ArcOutline& outline, int index, On end, const Vec2& point) {
    const Piece& piece = outline.pieces()[index];
    const Joint& joint = joint_at(outline, index, end);
    Nearest result;
    result.piece = index;
    result.foot = end == On::start ? piece.start : piece.end;
    const Vec2 from_foot = point - result.foot;
    const double apart = from_foot.norm();
    const double sign = from_foot.dot(joint.normal) >= 0.0 ? 1.0 : -1.0;
    result.distance = sign * apart;

    // A point on the normal of a smooth joint comes here by rounding alone: it has what the piece has. The
    // direction from the foot would be noise close to it.
    const double aside = std::abs(cross(joint.normal, from_foot));
    if (joint.turn == Turn::smooth && aside <= 1e-6 * apart + least_distance) {
        result.normal = joint.normal;
        result.distance = from_foot.dot(joint.normal);
        if (piece.is_arc()) result.curvature = arc_curvature(piece, point);
        return result;
    }
    result.normal = apart > least_distance ? Vec2(from_foot * (sign / apart)) : joint.normal;
    result.curvature = sign * held_inverse(apart);
    return result;
}

Nearest describe(const ArcOutline& outline, const Found& best, const Vec2& point) {
    const Piece& piece = outline.pieces()[best.piece];
    On on = best.on;
    constexpr double tip = least_distance * least_distance;
    if (best.squared < tip && on == On::inner) {  // rounding must not decide at a corner's tip
        if ((point - piece.start).squaredNorm() < tip) on = On::start;
        if ((point - piece.end).squaredNorm() < tip) on = On::end;
    }
    if (on != On::inner) return nearest_at_joint(outline, best.piece, on, point);
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
