#include "sim/clearance/access.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sim/clearance/pieces.h"

namespace overbend::clearance {

namespace {

// All of the strip, as it lies in a state.
std::vector<Convex> whole_strip(const stroke::Recording& r, int state) {
    std::vector<Convex> pieces;
    const stroke::FormingZone none{1e300, 1e300};
    for (const Span& span : spans_outside(r, {state}, none)) pieces.push_back(piece_of(r, state, span));
    return pieces;
}

Convex shifted(const Convex& piece, const Vec2& by) {
    Convex moved = piece;
    for (Vec2& c : moved.corners) c += by;
    return moved;
}

// About the punch's axis at the height of the die's face.
Convex turned(const Convex& piece, double angle) {
    Convex moved = piece;
    const double c = std::cos(angle), sn = std::sin(angle);
    for (Vec2& p : moved.corners) p = Vec2(c * p.x() - sn * p.y(), sn * p.x() + c * p.y());
    return moved;
}

class Ways {
  public:
    Ways(const Surroundings& all, int state)
        : all_(all), state_(state), pieces_(whole_strip(all.recording(), state)) {
        // what lies on the die, or was pressed, touches: that is where it starts from
        skin_ = 0.02 * all.recording().thickness;
    }

    // The first tool that the ram's tools among them hit the strip with, going up; -1: none.
    int hit_by_ram(double up) const {
        for (int k = 0; k < all_.count(); ++k) {
            if (!tools()[k].moves_with_ram()) continue;
            for (const Convex& piece : pieces_)
                if (meets(
                        k, piece,
                        [&](double way) { return std::make_pair(place_of(k, way), Vec2(0.0, 0.0)); }, up))
                    return k;
        }
        return -1;
    }

    // The first tool in the way of the strip from one shift to another, with the ram up; -1: none.
    int hit_by_strip(const std::vector<Convex>& pieces, const Vec2& from, const Vec2& to, double up) const {
        const double length = (to - from).norm();
        const Vec2 along = length > 0.0 ? Vec2((to - from) / length) : Vec2(0.0, 0.0);
        for (int k = 0; k < all_.count(); ++k) {
            for (const Convex& piece : pieces)
                if (meets(
                        k, piece,
                        [&](double way) { return std::make_pair(place_of(k, up), Vec2(from + way * along)); },
                        length))
                    return k;
        }
        return -1;
    }

    // Out to the left: lifted, tilted if that helps, and drawn back. The first tool in the way of the
    // plainest, or -1.
    int out(double up, double width) const {
        int first = -1;
        for (const double lift : {0.02, 0.1, 0.25, 0.5, 0.75})
            for (const double tilt : {0.0, -0.4, 0.4, -0.8, 0.8}) {
                for (const double aside : {0.0, 3.0}) {  // thicknesses, away from the gauge first
                    const int blocked =
                        hit_on_way(aside * all_.recording().thickness, lift * up, tilt, up, width);
                    if (blocked < 0) return -1;
                    if (first < 0) first = blocked;
                }
            }
        return first;
    }

  private:
    const tool::ToolSet& tools() const { return all_.recording().tools; }
    Vec2 place_of(int k, double up) const {
        const Vec2 rise(0.0, tools()[k].moves_with_ram() ? up : 0.0);
        return stroke::tool_position(tools(), k, all_.recording().states[state_]) + rise;
    }

    // Whether a piece meets a tool on a way of this length; at(way): where the tool stands and how far
    // the strip is shifted. A face that the strip lies on is left, not met.
    template <class At>
    bool meets(int k, const Convex& piece, const At& at, double length) const {
        const double thickness = all_.recording().thickness;
        for (double gone = 0.0;;) {
            const auto [position, shift] = at(gone);
            const double distance = gap(all_.solid(k), position, shifted(piece, shift), length).distance;
            // where the way begins the strip may lie on a face or in a tool that let it go
            if (distance < -2.0 * skin_ && (gone > 0.0 || length == 0.0)) return true;
            if (gone >= length) return false;
            gone = std::min(length, gone + std::max(distance, 0.5 * thickness));
        }
    }

    int hit_on_way(double aside, double lift, double tilt, double up, double width) const {
        constexpr double step = 0.05;  // rad, of the tilting
        const Vec2 off(-aside, 0.0), lifted(-aside, lift);
        int blocked = aside > 0.0 ? hit_by_strip(pieces_, Vec2::Zero(), off, up) : -1;
        if (blocked < 0) blocked = hit_by_strip(pieces_, off, lifted, up);
        if (blocked >= 0) return blocked;
        std::vector<Convex> tilted = pieces_;
        const int steps = static_cast<int>(std::ceil(std::abs(tilt) / step));
        for (int i = 1; i <= steps; ++i) {
            for (std::size_t p = 0; p < tilted.size(); ++p) tilted[p] = turned(pieces_[p], tilt * i / steps);
            blocked = hit_by_strip(tilted, lifted, lifted, up);
            if (blocked >= 0) return blocked;
        }
        return hit_by_strip(tilted, lifted, lifted - Vec2(width, 0.0), up);
    }

    const Surroundings& all_;
    int state_;
    std::vector<Convex> pieces_;
    double skin_ = 0.0;
};

// How far the strip has to go so that it is clear of everything.
double width_of(const stroke::Recording& r, const stroke::State& s) {
    double left = 1e300, right = -1e300;
    for (const double x : s.x) right = std::max(right, x);
    for (const tool::RigidTool& t : r.tools)
        if (t.role != tool::Role::ram && t.role != tool::Role::bed)  // over the bed it lies free
            left = std::min(left, t.position.x() + t.outline.box().low.x());
    return std::max(0.0, right - left) + r.thickness;
}

}  // namespace

Access access_of(const Surroundings& all, double raised) {
    const stroke::Recording& r = all.recording();
    const int first = 0, last = static_cast<int>(r.states.size()) - 1;
    Access access;

    // In: the way out, backwards, and then the punch down.
    const Ways laid(all, first);
    access.blocked_in_by = laid.hit_by_ram(raised);
    if (access.blocked_in_by < 0) access.blocked_in_by = laid.out(raised, width_of(r, r.states[first]));
    access.in_plane_in = access.blocked_in_by < 0;

    const Ways free(all, last);
    access.blocked_out_by = free.hit_by_ram(raised);
    if (access.blocked_out_by < 0) access.blocked_out_by = free.out(raised, width_of(r, r.states[last]));
    access.in_plane_out = access.blocked_out_by < 0;
    return access;
}

}  // namespace overbend::clearance
