// Outlines of rigid tools: closed, counter-clockwise, made of lines and arcs; solid on the left of the
// walking direction, so inside.
//
// Units  mm, rad. Coordinates are the tool's own (see punch.h, die.h for where each kind has its origin).

#pragma once

#include <Eigen/Core>
#include <string>
#include <vector>

namespace overbend::tool {

using Vec2 = Eigen::Vector2d;

// One line or arc of an outline.
struct Piece {
    Vec2 start = Vec2::Zero();
    Vec2 end = Vec2::Zero();
    double radius = 0.0;        // mm; 0 for a line
    Vec2 centre = Vec2::Zero(); // of the arc; unused for a line
    double sweep = 0.0;         // rad, turned through from start to end; > 0 counter-clockwise (a convex
                                // arc), < 0 clockwise (a concave one); 0 for a line
    bool is_arc() const { return radius > 0.0; }
};

// A corner of a polygon that is rounded off with the given radius (0: stays sharp).
struct Corner {
    Vec2 at = Vec2::Zero();
    double radius = 0.0;  // mm, >= 0
};

struct Box {
    Vec2 low = Vec2::Zero();
    Vec2 high = Vec2::Zero();
};

// Invariant: at least two pieces, each joined to the next within 1e-9 mm, closed, counter-clockwise,
// not crossing itself.
class ArcOutline {
  public:
    // Throws OutOfRange: open, crossing itself, without area, or clockwise pieces that cannot be turned.
    // Pieces given clockwise are turned round.
    explicit ArcOutline(std::vector<Piece> pieces);

    const std::vector<Piece>& pieces() const { return pieces_; }
    const Box& box() const { return box_; }
    double area() const;  // mm2, > 0

  private:
    std::vector<Piece> pieces_;
    Box box_;
};

// Rounds the corners of a closed polygon (given in either sense) with tangent arcs.
// Throws OutOfRange: a radius too large for the sides beside it (the message names the corner and the
// largest radius that fits), fewer than three corners, sides that cross.
ArcOutline round_corners(const std::vector<Corner>& corners);

// The same outline moved / mirrored left to right (x -> -x) / turned by half a turn about the origin.
ArcOutline shifted(const ArcOutline& outline, const Vec2& by);
ArcOutline mirrored(const ArcOutline& outline);
ArcOutline half_turned(const ArcOutline& outline);

// Points along the outline for pictures and tests: arcs cut so that no chord is further than sag from
// its arc. sag in mm, > 0. Closed: the first point is not repeated.
std::vector<Vec2> sample(const ArcOutline& outline, double sag);

}  // namespace overbend::tool
