#include "sim/plan/stroke_room.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace overbend::plan {

namespace {

using clearance::Convex;
using Eigen::Vector2d;

constexpr double unknown_reach = -1e300;
constexpr int last_instant = 192;      // of the instants that are looked at, at even steps of s
constexpr int least_instants = 4;      // between two that are
constexpr double longest_step = 0.25;  // of s

Vector2d stands(const Obstacle& o, double ram) {
    return o.stands + Vector2d(0.0, o.with_ram ? ram : 0.0);
}

BendSet low_bits(BendSet made, int count) {
    return made & ((BendSet{1} << count) - 1);
}

double furthest_corner(const std::vector<Convex>& pieces) {
    double furthest = 0.0;
    for (const Convex& piece : pieces)
        for (const Vector2d& c : piece.corners) furthest = std::max(furthest, c.squaredNorm());
    return std::sqrt(furthest);
}

// The instant that can come next: a way is cut short to a whole one, never lengthened, but for the least.
int next_instant(int now, double step) {
    const int instants = std::max(least_instants, static_cast<int>(step * last_instant));
    return std::min(last_instant, now + instants);
}

tool::Box box_about(const Convex& piece) {
    tool::Box box{Vector2d::Constant(1e300), Vector2d::Constant(-1e300)};
    for (const Vector2d& c : piece.corners) box.low = box.low.cwiseMin(c), box.high = box.high.cwiseMax(c);
    return box;
}

// Holds all corners of these pieces.
struct Circle {
    Vector2d middle = Vector2d::Zero();
    double radius = 0.0;
};
Circle circle_about(const std::vector<Convex>& pieces) {
    tool::Box all{Vector2d::Constant(1e300), Vector2d::Constant(-1e300)};
    for (const Convex& piece : pieces) {
        const tool::Box box = box_about(piece);
        all.low = all.low.cwiseMin(box.low), all.high = all.high.cwiseMax(box.high);
    }
    return {0.5 * (all.low + all.high), 0.5 * (all.high - all.low).norm()};
}

struct Boxed {
    Convex piece;
    tool::Box box;
};
Boxed boxed(const Convex& piece) {
    return {piece, box_about(piece)};
}

// 0 where they overlap.
double between_boxes(const tool::Box& a, const tool::Box& b) {
    return (a.low - b.high).cwiseMax(b.low - a.high).cwiseMax(0.0).norm();
}

// Of a point from a box; 0 inside.
double from_box(const tool::Box& box, const Vector2d& p) {
    return (p - p.cwiseMax(box.low).cwiseMin(box.high)).norm();
}

}  // namespace

StrokeRoom::StrokeRoom(const StrokePath& path, Side left, Side right, std::vector<Obstacle> obstacles,
                       double reach_left, double reach_right, const RoomOptions& options)
    : path_(path),
      speed_(fastest(path)),
      needed_(needed_straight(path)),
      left_{std::move(left), true, reach_left, {}},
      right_{std::move(right), false, reach_right, {}},
      obstacles_(std::move(obstacles)),
      options_(options) {
    left_.marks.resize(left_.side.groups());
    right_.marks.resize(right_.side.groups());
    meetings_.resize(left_.marks.size() * right_.marks.size());
    gauge_reach_.resize(right_.marks.size());
    for (int i = 0; i <= last_instant; ++i)
        instants_.push_back(at(path_, static_cast<double>(i) / last_instant));
}

// ---- one group against the tools

Vector2d StrokeRoom::placed(const Half& half, const Vector2d& own, const PathPoint& point) const {
    const Frame& f = half.mirror ? point.left : point.right;
    const Vector2d here = f.at + own.x() * f.along() + own.y() * f.across();
    return half.mirror ? Vector2d(-here.x(), here.y()) : here;
}

Convex StrokeRoom::placed(const Half& half, const Convex& piece, const PathPoint& point) const {
    Convex moved = piece;
    for (Vector2d& c : moved.corners) c = placed(half, c, point);
    if (half.mirror) std::reverse(moved.corners.begin(), moved.corners.end());
    return moved;
}

// By conservative advancement.
bool StrokeRoom::goes_through(const Half& half, const std::vector<Convex>& pieces) const {
    const double strip_speed = speed_.shift + speed_.turn * furthest_corner(pieces);
    const Circle round = circle_about(pieces);
    std::vector<const Obstacle*> near;
    for (int i = 0;;) {
        const PathPoint& point = instants_[i];
        // what is too far from all the pieces to bound a step is left out
        const Vector2d middle = placed(half, round.middle, point);
        near.clear();
        for (const Obstacle& o : obstacles_) {
            const double reach = round.radius + options_.margin + longest_step * (strip_speed + speed_.ram);
            if (from_box(o.solid->outline().box(), middle - stands(o, point.ram)) <= reach)
                near.push_back(&o);
        }
        double step = longest_step;
        for (std::size_t k = 0; k < pieces.size() && !near.empty(); ++k) {
            const Convex here = placed(half, pieces[k], point);
            for (const Obstacle* obstacle : near) {
                const Obstacle& o = *obstacle;
                const double speed = strip_speed + (o.with_ram ? speed_.ram : 0.0);
                const double margin = o.lies_on ? 0.0 : options_.margin;
                const double distance =
                    clearance::gap(*o.solid, stands(o, point.ram), here, margin + speed * step).distance;
                if (distance < (o.lies_on ? -options_.lies_deep * path_.thickness : margin)) return false;
                if (distance < margin + speed * step) step = std::max(0.0, distance - margin) / speed;
            }
        }
        if (i == last_instant) return true;
        i = next_instant(i, step);
    }
}

// Whether the punch, or what moves with it, is above the strip on the way down to this instant, or up from
// it.
bool StrokeRoom::is_under_punch(const Half& half, const std::vector<Convex>& pieces, double s) const {
    const PathPoint point = at(path_, s);
    for (const Convex& piece : pieces) {
        const Boxed here = boxed(placed(half, piece, point));
        for (const Obstacle& o : obstacles_) {
            const tool::Box& box = o.solid->outline().box();
            const Vector2d lowest = stands(o, point.ram);
            if (!o.with_ram || here.box.high.x() < box.low.x() + lowest.x() ||
                here.box.low.x() > box.high.x() + lowest.x())
                continue;
            // above the piece it meets it no more
            const double most = std::min(options_.raised, here.box.high.y() - box.low.y() - lowest.y());
            for (double raised = 0.0; raised <= most;) {
                const double distance =
                    clearance::gap(*o.solid, stands(o, point.ram + raised), here.piece, options_.raised)
                        .distance;
                if (distance < 0.0) return true;
                raised += std::max(distance, 0.25);
            }
        }
    }
    return false;
}

std::uint8_t StrokeRoom::look(const Half& half, int group, BendSet made) const {
    const std::vector<Convex> pieces = pieces_of(half.side, group, made, half.reach);
    if (!goes_through(half, pieces)) return known | blocked;
    std::uint8_t mark = known;
    if (is_under_punch(half, pieces, 0.0)) mark |= no_way_in;
    if (is_under_punch(half, pieces, free_at(path_))) mark |= no_way_out;
    return mark;
}

std::uint8_t StrokeRoom::mark_of(Half& half, int group, BendSet made) {
    const BendSet bits = low_bits(made, group);
    std::vector<std::uint8_t>& marks = half.marks[group];
    if (marks.empty()) marks.assign(std::size_t{1} << group, 0);
    if (!(marks[bits] & known)) marks[bits] = look(half, group, bits);
    return marks[bits];
}

std::vector<Vector2d> StrokeRoom::swept(bool left, BendSet made) const {
    constexpr int every = 4;  // instants
    const Half& half = left ? left_ : right_;
    std::vector<Vector2d> points;
    for (int group = 1; group < half.side.groups(); ++group)
        for (const Convex& piece : pieces_of(half.side, group, low_bits(made, group), 0.0))
            for (std::size_t k = 0; k < piece.corners.size(); ++k) {
                const Vector2d &a = piece.corners[k], &b = piece.corners[(k + 1) % piece.corners.size()];
                const int parts = std::max(1, static_cast<int>((b - a).norm() / path_.thickness));
                for (int part = 0; part < parts; ++part)
                    for (int i = 0; i <= last_instant; i += every)
                        points.push_back(placed(half, a + (b - a) * part / parts, instants_[i]) -
                                         Vector2d(0.0, instants_[i].ram));
            }
    return points;
}

// ---- the strip against itself

bool StrokeRoom::groups_meet(int left, BendSet made_left, int right, BendSet made_right) const {
    if (left == 0 && right == 0) return false;  // they are joined by the bend itself
    const std::vector<Convex> a = pieces_of(left_.side, left, made_left, 0.0);
    const std::vector<Convex> b = pieces_of(right_.side, right, made_right, 0.0);
    const Circle round_a = circle_about(a), round_b = circle_about(b);
    const double speed = 2.0 * speed_.shift + speed_.turn * (furthest_corner(a) + furthest_corner(b));
    std::vector<Boxed> there;
    for (int i = 0;;) {
        const PathPoint& point = instants_[i];
        const Vector2d apart = placed(left_, round_a.middle, point) - placed(right_, round_b.middle, point);
        // far apart, comparing their circles is enough
        double least = apart.norm() - round_a.radius - round_b.radius;
        if (least < longest_step * speed) {
            there.clear();
            for (const Convex& pb : b) there.push_back(boxed(placed(right_, pb, point)));
            double nearest = 1e300;
            for (const Convex& pa : a) {
                const Boxed here = boxed(placed(left_, pa, point));
                for (const Boxed& other : there)
                    if (between_boxes(here.box, other.box) < nearest)
                        nearest = std::min(nearest, clearance::apart(here.piece, other.piece));
            }
            least = std::max(least, nearest);
        }
        if (least <= 0.0) return true;
        if (i == last_instant) return false;
        i = next_instant(i, least / speed);
    }
}

bool StrokeRoom::halves_meet(BendSet made_left, BendSet made_right) {
    for (int i = 0; i < left_.side.groups(); ++i)
        for (int j = 0; j < right_.side.groups(); ++j) {
            std::vector<std::uint8_t>& marks = meetings_[i * right_.marks.size() + j];
            if (marks.empty()) marks.assign(std::size_t{1} << (i + j), 0);
            const BendSet bits = low_bits(made_left, i), other = low_bits(made_right, j);
            std::uint8_t& mark = marks[bits | (other << i)];
            if (!(mark & known))
                mark = groups_meet(i, bits, j, other) ? std::uint8_t{known | blocked} : std::uint8_t{known};
            if (mark & blocked) return true;
        }
    return false;
}

// ---- the whole strip

bool StrokeRoom::has_room(BendSet made_left, BendSet made_right) {
    if (!is_supported(made_left, made_right)) return false;
    for (int i = 0; i < left_.side.groups(); ++i)
        if (mark_of(left_, i, made_left) & blocked) return false;
    for (int j = 0; j < right_.side.groups(); ++j)
        if (mark_of(right_, j, made_right) & blocked) return false;
    return !halves_meet(made_left, made_right);
}

double StrokeRoom::missing_left(BendSet made_left) const {
    return needed_ - straight_length(left_.side, made_left);
}

double StrokeRoom::missing_right(BendSet made_right) const {
    return needed_ - straight_length(right_.side, made_right);
}

bool StrokeRoom::is_supported(BendSet made_left, BendSet made_right) const {
    return missing_left(made_left) <= 0.0 && missing_right(made_right) <= 0.0;
}

int StrokeRoom::slides(BendSet made_left, BendSet made_right) {
    std::uint8_t all = 0;
    for (int i = 0; i < left_.side.groups(); ++i) all |= mark_of(left_, i, made_left);
    for (int j = 0; j < right_.side.groups(); ++j) all |= mark_of(right_, j, made_right);
    return ((all & no_way_in) ? 1 : 0) + ((all & no_way_out) ? 1 : 0);
}

double StrokeRoom::gauge(BendSet made_right) {
    double furthest = at(path_, 0.0).right.at.x();
    for (int j = 0; j < right_.side.groups(); ++j) {
        const BendSet bits = low_bits(made_right, j);
        std::vector<double>& reaches = gauge_reach_[j];
        if (reaches.empty()) reaches.assign(std::size_t{1} << j, unknown_reach);
        if (reaches[bits] == unknown_reach) reaches[bits] = reach_at_gauge(j, bits);
        furthest = std::max(furthest, reaches[bits]);
    }
    return furthest;
}

double StrokeRoom::reach_at_gauge(int group, BendSet made) const {
    double furthest = -1e299;
    for (const Convex& piece : pieces_of(right_.side, group, made, 0.0))
        for (const Vector2d& c : placed(right_, piece, instants_[0]).corners)
            if (c.y() > options_.gauge_low && c.y() < options_.gauge_high)
                furthest = std::max(furthest, c.x());
    return furthest;
}

// ---- what is in the way

std::optional<Hit> StrokeRoom::worst_hit(BendSet made_left, BendSet made_right) const {
    constexpr int instants = 60;
    std::optional<Hit> worst;
    const auto look_at = [&](const Half& half, BendSet made) {
        for (int g = 0; g < half.side.groups(); ++g) {
            const std::vector<Convex> pieces = pieces_of(half.side, g, low_bits(made, g), half.reach);
            for (int m = 0; m <= instants; ++m) {
                const double s = static_cast<double>(m) / instants;
                const PathPoint point = at(path_, s);
                for (const Convex& piece : pieces)
                    for (int k = 0; k < static_cast<int>(obstacles_.size()); ++k) {
                        const Obstacle& o = obstacles_[k];
                        const clearance::Gap gap = clearance::gap(
                            *o.solid, stands(o, point.ram), placed(half, piece, point), options_.margin);
                        const double limit =
                            o.lies_on ? -options_.lies_deep * path_.thickness : options_.margin;
                        if (gap.distance >= limit) continue;
                        if (worst && worst->depth >= -gap.distance) continue;
                        worst = Hit{half.mirror, g, k, -gap.distance, s, gap.on_strip};
                    }
            }
        }
    };
    look_at(left_, made_left);
    look_at(right_, made_right);
    if (worst) return worst;
    for (int i = 0; i < left_.side.groups(); ++i)
        for (int j = 0; j < right_.side.groups(); ++j)
            if (groups_meet(i, low_bits(made_left, i), j, low_bits(made_right, j)))
                return Hit{true, i, -1, 0.0, 1.0, Vector2d::Zero()};
    return std::nullopt;
}

}  // namespace overbend::plan
