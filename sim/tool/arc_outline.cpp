#include "sim/tool/arc_outline.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "sim/errors.h"
#include "sim/tool/crossing.h"
#include "sim/tool/figures.h"
#include "sim/tool/vectors.h"
#include "sim/units.h"

namespace overbend::tool {

namespace {

constexpr double joined = 1e-9;         // mm, ends nearer than this are one; shorter pieces are none
constexpr double off_circle = 1e-7;     // mm, an arc's ends may lie so far off its circle
constexpr double smooth_turn = 1e-7;    // rad, a turn below this is rounding
constexpr double doubling_back = 1e-6;  // rad, short of half a turn

Vec2 right_of(const Vec2& v) {
    return Vec2(v.y(), -v.x());
}

Vec2 turned(const Vec2& v, double angle) {
    const double c = std::cos(angle);
    const double s = std::sin(angle);
    return Vec2(c * v.x() - s * v.y(), s * v.x() + c * v.y());
}

// Unit tangent in walking direction at one of the ends.
Vec2 tangent(const Piece& piece, const Vec2& end) {
    if (!piece.is_arc()) return piece.direction;
    const Vec2 radial = (end - piece.centre).normalized();
    return piece.sweep > 0.0 ? left_of(radial) : right_of(radial);
}

[[noreturn]] void refuse(const std::string& wrong, const std::string& right) {
    throw OutOfRange("outline", wrong, right);
}

void check_piece(const Piece& piece) {
    const bool finite = piece.start.allFinite() && piece.end.allFinite() && piece.centre.allFinite() &&
                        std::isfinite(piece.radius) && std::isfinite(piece.sweep);
    if (!finite) refuse("a coordinate is not a number", "give finite coordinates in mm");
    if (piece.radius < 0.0) refuse("an arc's radius is " + mm(piece.radius), "give more than 0 mm");
    if (!piece.is_arc()) return;
    if (piece.sweep == 0.0 || std::abs(piece.sweep) >= 2.0 * pi) {
        refuse("an arc turns through " + deg(piece.sweep), "give less than a full turn, and not 0");
    }
    const Vec2 from_centre = piece.start - piece.centre;
    const double start_off = std::abs(from_centre.norm() - piece.radius);
    const double end_off = (piece.centre + turned(from_centre, piece.sweep) - piece.end).norm();
    if (start_off > off_circle || end_off > off_circle) {
        refuse("the arc from " + place(piece.start) + " to " + place(piece.end) +
                   " misses its end points by " + mm(std::max(start_off, end_off)),
               "give a centre, radius and sweep that meet both ends");
    }
}

void check_closed(const std::vector<Piece>& pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const Piece& next = pieces[(i + 1) % pieces.size()];
        const double gap = (next.start - pieces[i].end).norm();
        if (gap <= joined) continue;
        refuse("open by " + mm(gap) + " at " + place(pieces[i].end),
               "start each piece where the previous one ends");
    }
}

void measure(Piece& piece) {
    if (piece.is_arc()) {
        piece.length = piece.radius * std::abs(piece.sweep);
        piece.direction = turned(piece.start - piece.centre, 0.5 * piece.sweep).normalized();
        piece.cos_half_sweep = std::cos(0.5 * piece.sweep);
    } else {
        piece.length = (piece.end - piece.start).norm();
        if (piece.length > 0.0) piece.direction = (piece.end - piece.start) / piece.length;
    }
}

double signed_area(const std::vector<Piece>& pieces) {
    const Vec2 origin = pieces.front().start;  // near the outline, for accuracy
    double twice = 0.0;
    for (const Piece& piece : pieces) {
        twice += cross(piece.start - origin, piece.end - origin);
        // between an arc and its chord
        twice += piece.radius * piece.radius * (piece.sweep - std::sin(piece.sweep));
    }
    return 0.5 * twice;
}

void turn_round(std::vector<Piece>& pieces) {
    std::reverse(pieces.begin(), pieces.end());
    for (Piece& piece : pieces) {
        std::swap(piece.start, piece.end);
        if (piece.is_arc()) piece.sweep = -piece.sweep;
        measure(piece);
    }
}

// Turn from one piece to the next at their joint, in rad, > 0 to the left.
double turn_between(const Piece& before, const Piece& after) {
    const Vec2 in = tangent(before, before.end);
    const Vec2 out = tangent(after, after.start);
    return std::atan2(cross(in, out), in.dot(out));
}

Joint join(const Piece& before, const Piece& after) {
    const double turn = turn_between(before, after);
    if (std::abs(turn) > pi - doubling_back) {
        refuse("doubles back at " + place(after.start), "leave an angle between the sides");
    }
    Joint joint;
    if (std::abs(turn) > smooth_turn) joint.turn = turn > 0.0 ? Turn::convex : Turn::concave;
    const Vec2 sum = right_of(tangent(before, before.end)) + right_of(tangent(after, after.start));
    joint.normal = sum.normalized();
    return joint;
}

// A point where two pieces cross or touch other than at their joints.
std::optional<Vec2> crossing(const std::vector<Piece>& pieces) {
    const std::size_t count = pieces.size();
    for (std::size_t i = 0; i < count; ++i) {
        for (std::size_t j = i + 1; j < count; ++j) {
            std::vector<Vec2> joints;
            if (j == i + 1) joints.push_back(pieces[j].start);
            if ((j + 1) % count == i) joints.push_back(pieces[i].start);
            if (std::optional<Vec2> found = common_point(pieces[i], pieces[j], joints)) return found;
        }
    }
    return std::nullopt;
}

Box box_of(const std::vector<Piece>& pieces) {
    Box box{pieces.front().start, pieces.front().start};
    const auto take_in = [&box](const Vec2& point) {
        box.low = box.low.cwiseMin(point);
        box.high = box.high.cwiseMax(point);
    };
    for (const Piece& piece : pieces) {
        take_in(piece.end);
        if (!piece.is_arc()) continue;
        for (const Vec2& axis : {Vec2(1, 0), Vec2(0, 1), Vec2(-1, 0), Vec2(0, -1)}) {
            if (axis.dot(piece.direction) > piece.cos_half_sweep) take_in(piece.centre + piece.radius * axis);
        }
    }
    return box;
}

// Each point of the outline through a motion that keeps lengths; sense is -1 where it mirrors.
template <typename Motion>
ArcOutline moved(const ArcOutline& outline, double sense, const Motion& motion) {
    std::vector<Piece> pieces = outline.pieces();
    for (Piece& piece : pieces) {
        piece.start = motion(piece.start);
        piece.end = motion(piece.end);
        if (piece.is_arc()) piece.centre = motion(piece.centre);
        piece.sweep *= sense;
    }
    return ArcOutline(std::move(pieces));
}

}  // namespace

ArcOutline::ArcOutline(std::vector<Piece> pieces) : pieces_(std::move(pieces)) {
    for (Piece& piece : pieces_) {
        check_piece(piece);
        if (!piece.is_arc()) piece.sweep = 0.0;
        measure(piece);
    }
    if (!pieces_.empty()) check_closed(pieces_);
    const auto is_short = [](const Piece& piece) { return piece.length < joined; };
    pieces_.erase(std::remove_if(pieces_.begin(), pieces_.end(), is_short), pieces_.end());
    if (pieces_.size() < 2) {
        refuse("it has " + std::to_string(pieces_.size()) + " pieces", "give at least two lines or arcs");
    }

    for (std::size_t i = 0; i < pieces_.size(); ++i) {
        joints_.push_back(join(pieces_[(i + pieces_.size() - 1) % pieces_.size()], pieces_[i]));
    }
    if (const std::optional<Vec2> found = crossing(pieces_)) {
        refuse("crosses or touches itself at " + place(*found), "use sides that meet only at their ends");
    }
    box_ = box_of(pieces_);
    const double area = signed_area(pieces_);
    const Vec2 size = box_.high - box_.low;
    if (std::abs(area) <= 1e-12 * size.squaredNorm()) refuse("it has no area", "give sides that enclose one");
    if (area > 0.0) return;

    turn_round(pieces_);
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
        joints_[i] = join(pieces_[(i + pieces_.size() - 1) % pieces_.size()], pieces_[i]);
    }
}

double ArcOutline::area() const {
    return signed_area(pieces_);
}

ArcOutline shifted(const ArcOutline& outline, const Vec2& by) {
    return moved(outline, 1.0, [&by](const Vec2& point) { return Vec2(point + by); });
}

ArcOutline mirrored(const ArcOutline& outline) {
    return moved(outline, -1.0, [](const Vec2& point) { return Vec2(-point.x(), point.y()); });
}

ArcOutline half_turned(const ArcOutline& outline) {
    return moved(outline, 1.0, [](const Vec2& point) { return Vec2(-point); });
}

std::vector<Vec2> sample(const ArcOutline& outline, double sag) {
    require_above_zero("sag", sag);
    std::vector<Vec2> points;
    for (const Piece& piece : outline.pieces()) {
        points.push_back(piece.start);
        if (!piece.is_arc()) continue;
        // a chord over the angle w is r (1 - cos(w/2)) from its arc; at most a quarter turn
        const double step = std::min(2.0 * std::acos(std::max(1.0 - sag / piece.radius, 0.0)), 0.5 * pi);
        const int chords = std::max(1, static_cast<int>(std::ceil(std::abs(piece.sweep) / step)));
        for (int i = 1; i < chords; ++i) {
            points.push_back(piece.centre + turned(piece.start - piece.centre, piece.sweep * i / chords));
        }
    }
    return points;
}

}  // namespace overbend::tool
