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
    double radius = 0.0;         // mm; 0 for a line
    Vec2 centre = Vec2::Zero();  // of the arc; unused for a line
    double sweep = 0.0;          // rad, turned through from start to end; > 0 counter-clockwise (a convex
                                 // arc), < 0 clockwise (a concave one); 0 for a line
    bool is_arc() const { return radius > 0.0; }

    // Worked out by ArcOutline for the signed distance; what is given here is overwritten.
    double length = 0.0;             // mm, along the piece
    Vec2 direction = Vec2::UnitX();  // unit; line: from start to end; arc: from the centre to its middle
    double cos_half_sweep = 1.0;     // arc: cosine of half its sweep
};

// What joins two pieces.
enum class Turn { smooth, convex, concave };

// The joint at the start of a piece. Smooth: the tangents agree within 1e-7 rad.
struct Joint {
    Turn turn = Turn::smooth;
    Vec2 normal = Vec2::UnitY();  // unit, away from the solid: the mean of the normals of both pieces
};

// A point of a path: a rounded corner between two lines, or the end of an arc.
struct PathPoint {
    Vec2 at = Vec2::Zero();
    double radius = 0.0;  // mm, >= 0: the corner is rounded off with it; 0: stays as it is
    double bulge = 0.0;   // tangent of a quarter of the sweep of the arc to the next point, > 0
                          // counter-clockwise; 0: a line. A point with a bulge on either side has no radius.
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

// Invariant: at least two pieces, each joined to the next within 2e-9 mm, closed, counter-clockwise,
// neither crossing nor touching itself, nowhere doubling back (a corner of no or a full included angle).
class ArcOutline {
  public:
    // Pieces given clockwise are turned round; pieces shorter than 1e-9 mm are left out.
    // Throws OutOfRange: fewer than two pieces, open (ends more than 1e-9 mm apart), an arc whose ends are
    // more than 1e-7 mm off its circle, crossing or touching itself, doubling back, without area.
    explicit ArcOutline(std::vector<Piece> pieces);

    const std::vector<Piece>& pieces() const { return pieces_; }
    const std::vector<Joint>& joints() const { return joints_; }  // joint i is at the start of piece i
    const Box& box() const { return box_; }
    double area() const;  // mm2, > 0

  private:
    std::vector<Piece> pieces_;
    std::vector<Joint> joints_;
    Box box_;
};

// A closed path of lines and arcs, given in either sense; its corners are rounded with tangent arcs. The
// first point is not repeated.
// Throws OutOfRange: a radius too large for the sides beside it (the message names the point and the
// largest radius that fits), a radius beside a bulge, two points at the same place, fewer than three points
// (two if there is a bulge), sides that cross.
ArcOutline from_points(const std::vector<PathPoint>& points);

// The same for a polygon, without bulges.
ArcOutline round_corners(const std::vector<Corner>& corners);

// The same outline moved / mirrored left to right (x -> -x) / turned by half a turn about the origin.
ArcOutline shifted(const ArcOutline& outline, const Vec2& by);
ArcOutline mirrored(const ArcOutline& outline);
ArcOutline half_turned(const ArcOutline& outline);

// Points along the outline for pictures and tests: arcs cut so that no chord is further than sag from
// its arc. sag in mm, > 0. Closed: the first point is not repeated.
std::vector<Vec2> sample(const ArcOutline& outline, double sag);

}  // namespace overbend::tool
