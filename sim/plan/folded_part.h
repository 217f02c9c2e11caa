// The half-formed strip by rule, for planning: flats are straight, made bends have the drawing's angle and
// radius, bends that are not made yet are as straight as their flats. Its shape depends on which bends are
// made, not on their order.
//
// Units  mm, rad.

#pragma once

#include <vector>

#include "sim/clearance/solid.h"
#include "sim/plan/bend_order.h"

namespace overbend::plan {

// The drawing, walked from the left end. Shapes: n bends, n + 1 flats.
struct FoldedPart {
    double thickness = 0.0;
    std::vector<double> flats;      // straight lengths, > 0
    std::vector<double> angle;      // signed, positive turns what follows up
    std::vector<double> radius;     // of the mid-line, > 0
    std::vector<double> allowance;  // length of blank that goes into the bend
    int bends() const { return static_cast<int>(angle.size()); }
};

// As it lies in the press. Bend b of the drawing is then bend bends() - 1 - b when the right end is first.
FoldedPart as_laid(const FoldedPart& part, bool face_down, bool right_first);
BendSet as_laid(BendSet set, int bends, bool right_first);

// An angle with its cosine and sine, which are asked for again and again.
struct Turn {
    double angle = 0.0, cos = 1.0, sin = 0.0;
    Turn() = default;
    explicit Turn(double angle_);
};

// A place and the way it looks.
class Frame {
  public:
    Eigen::Vector2d at = Eigen::Vector2d::Zero();
    double turn() const { return turn_; }
    const Eigen::Vector2d& along() const { return along_; }
    // A quarter turn counter-clockwise from along.
    Eigen::Vector2d across() const { return {-along_.y(), along_.x()}; }
    void turn_to(double angle) { turn_ = 0.0, along_ = Eigen::Vector2d::UnitX(), turn_by(Turn(angle)); }
    void turn_by(const Turn& by);

  private:
    double turn_ = 0.0;
    Eigen::Vector2d along_ = Eigen::Vector2d::UnitX();  // unit, kept with the turn
};

// What hangs on one side of a stroke's bend, walked outwards: m flats, m - 1 bends between them. In
// coordinates of its own: it begins at the origin along +x, y is up in the press; the left side is seen in a
// mirror, in which bends up still turn up. Bit k of a set: the bend between its flats k and k + 1.
struct Side {
    double thickness = 0.0;
    std::vector<double> flats;
    std::vector<double> angle, radius, allowance;
    std::vector<Turn> turn,
        turn_of_piece;  // over the whole bend, and over one of the pieces that it is cut into
    int groups() const { return static_cast<int>(flats.size()); }
};

// left_of: bends 0 ... b - 1 hang there, the nearest first; right_of: bends b + 1 ... n - 1.
Side left_of(const FoldedPart& laid, int b);
Side right_of(const FoldedPart& laid, int b);
// The bits of a whole set that lie on a side, in its own numbering.
BendSet bits_left_of(BendSet laid, int b);
BendSet bits_right_of(BendSet laid, int b);

// Group j: the bend before flat j, made or not, and flat j. Its shape depends on bits 0 ... j - 1 of the set.
Frame frame_of(const Side& side, int group, BendSet made);

// The convex pieces of a group, in the side's coordinates. skip: so much of the side's beginning is left out
// as long as it is straight (the tools press there). Made bends are cut so that a piece covers its share of
// the outer surface.
std::vector<clearance::Convex> pieces_of(const Side& side, int group, BendSet made, double skip);

// How far the side is straight from its beginning: to the first made bend, or its end.
double straight_length(const Side& side, BendSet made);

}  // namespace overbend::plan
