// Distance and overlap between a piece of the strip and a tool, a holder, the ram, the bed, the gauge.
//
// A solid is the closed chain of edges of its outline, arcs cut to chords; each edge is held against the
// piece by Box2D's distance of convex shapes. What lies inside is decided by the outline's exact signed
// distance, and so is the depth of an overlap: how far the deepest place of either is inside the other, to
// the nearest way out.
//
// Box2D counts in single precision, so both are moved to the solid's own coordinates first: distances are
// right to some 1e-5 mm for solids of some hundred millimetres. Its polygon radius and linear slop (which are
// metres there) play no part: shapes are given as bare corners.
//
// Units  mm, press coordinates.
// Source E. G. Gilbert, D. W. Johnson and S. S. Keerthi, IEEE J. Robotics Automat. 4 (1988) 193-203, as in
// Box2D.

#pragma once

#include <array>
#include <initializer_list>
#include <vector>

#include "sim/tool/arc_outline.h"

namespace overbend::clearance {

using tool::Vec2;

// Corners of a convex piece of the strip, counter-clockwise. Held in place: nothing is allocated.
class Corners {
  public:
    static constexpr int most = 8;
    Corners() = default;
    Corners(std::initializer_list<Vec2> corners);  // at most 8
    std::size_t size() const { return count_; }
    Vec2& operator[](std::size_t i) { return at_[i]; }
    const Vec2& operator[](std::size_t i) const { return at_[i]; }
    Vec2* begin() { return at_.data(); }
    Vec2* end() { return at_.data() + count_; }
    const Vec2* begin() const { return at_.data(); }
    const Vec2* end() const { return at_.data() + count_; }

  private:
    std::array<Vec2, most> at_;
    std::size_t count_ = 0;
};

struct Convex {
    Corners corners;  // 3 to 8
};

struct Gap {
    double distance = 1e300;  // > 0 apart; < 0: depth of an overlap; 1e300: further than was asked for
    Vec2 on_strip = Vec2::Zero();
    Vec2 on_solid = Vec2::Zero();
};

class Solid {
  public:
    // sag: how far a chord may be from its arc, mm.
    explicit Solid(const tool::ArcOutline& outline, double sag = 0.005);

    const tool::ArcOutline& outline() const { return outline_; }
    const std::vector<Vec2>& points() const { return points_; }  // of the chain, in its own coordinates

  private:
    friend Gap gap(const Solid& solid, const Vec2& position, const Convex& piece, double within);
    tool::ArcOutline outline_;
    std::vector<Vec2> points_;
    std::vector<tool::Box> edge_boxes_;  // edge i goes from point i to the next
};

// Least distance of the piece from the solid whose origin stands at `position`, looked for no further than
// `within`.
Gap gap(const Solid& solid, const Vec2& position, const Convex& piece, double within);

// Distance of two pieces of the strip; 0 when they touch or overlap.
double apart(const Convex& a, const Convex& b);

}  // namespace overbend::clearance
