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

// What hangs on one side of a stroke's bend, walked outwards: m flats, m - 1 bends between them. In
// coordinates of its own: it begins at the origin along +x, y is up in the press; the left side is seen in a
// mirror, in which bends up still turn up. Bit k of a set: the bend between its flats k and k + 1.
struct Side {
    double thickness = 0.0;
    std::vector<double> flats;
    std::vector<double> angle, radius, allowance;
    int groups() const { return static_cast<int>(flats.size()); }
};

// left_of: bends 0 ... b - 1 hang there, the nearest first; right_of: bends b + 1 ... n - 1.
Side left_of(const FoldedPart& laid, int b);
Side right_of(const FoldedPart& laid, int b);
// The bits of a whole set that lie on a side, in its own numbering.
BendSet bits_left_of(BendSet laid, int b);
BendSet bits_right_of(BendSet laid, int b);

// Where a group begins and which way it goes.
struct Frame {
    Eigen::Vector2d at = Eigen::Vector2d::Zero();
    double turn = 0.0;
    Eigen::Vector2d along() const;
    Eigen::Vector2d across() const;  // a quarter turn counter-clockwise from along
};

// Group j: the bend before flat j, made or not, and flat j. Its shape depends on bits 0 ... j - 1 of the set.
Frame frame_of(const Side& side, int group, BendSet made);

// The convex pieces of a group, in the side's coordinates. skip: so much of the side's beginning is left out
// as long as it is straight (the tools press there). Made bends are cut so that a piece covers its share of
// the outer surface.
std::vector<clearance::Convex> pieces_of(const Side& side, int group, BendSet made, double skip);

// How far the side is straight from its beginning: to the first made bend, or its end.
double straight_length(const Side& side, BendSet made);

}  // namespace overbend::plan
