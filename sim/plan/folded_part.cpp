#include "sim/plan/folded_part.h"

#include <algorithm>
#include <cmath>

namespace overbend::plan {

namespace {

using Eigen::Vector2d;

constexpr double arc_piece =
    0.36;  // rad, about 20 degrees: the outer surface is covered to 2 per cent of its radius

bool is_made(BendSet made, int bend) {
    return (made >> bend) & 1u;
}

int pieces_of_bend(double angle) {
    return std::max(1, static_cast<int>(std::ceil(std::abs(angle) / arc_piece)));
}

// From the end of one flat to the beginning of the next over a bend.
Frame past_bend(const Side& side, int bend, bool made, Frame f) {
    if (!made) {
        f.at += side.allowance[bend] * f.along();
        return f;
    }
    const double way = side.angle[bend] > 0.0 ? 1.0 : -1.0;
    const Vector2d centre = f.at + way * side.radius[bend] * f.across();
    f.turn_by(side.turn[bend]);
    f.at = centre - way * side.radius[bend] * f.across();
    return f;
}

// A straight stretch of the strip.
clearance::Convex straight_piece(const Frame& from, double length, double thickness) {
    const Vector2d end = from.at + length * from.along(), half = 0.5 * thickness * from.across();
    clearance::Convex piece;
    piece.corners = {from.at - half, end - half, end + half, from.at + half};
    return piece;
}

void add_arc(const Side& side, int bend, const Frame& from, std::vector<clearance::Convex>& pieces) {
    const double angle = side.angle[bend], way = angle > 0.0 ? 1.0 : -1.0;
    const int count = pieces_of_bend(angle);
    const double inner = std::max(0.0, side.radius[bend] - 0.5 * side.thickness);
    const double outer =
        (side.radius[bend] + 0.5 * side.thickness) / std::sqrt(0.5 * (1.0 + side.turn_of_piece[bend].cos));
    const Vector2d centre = from.at + way * side.radius[bend] * from.across();
    Frame f = from;
    for (int i = 0; i < count; ++i) {
        const Vector2d out = -way * f.across();
        f.turn_by(side.turn_of_piece[bend]);
        const Vector2d out_after = -way * f.across();
        // a sharp bend has its inner corners in one place
        const double in = std::max(inner, 1e-3 * side.thickness);
        const Vector2d a = centre + outer * out, b = centre + outer * out_after;
        const Vector2d c = centre + in * out_after, d = centre + in * out;
        clearance::Convex piece;
        if (way > 0.0)
            piece.corners = {a, b, c, d};
        else
            piece.corners = {d, c, b, a};
        pieces.push_back(piece);
    }
}

void add_turns(Side& side) {
    for (const double angle : side.angle) {
        side.turn.emplace_back(angle);
        side.turn_of_piece.emplace_back(angle / pieces_of_bend(angle));
    }
}

template <class List>
void append_outwards(const List& from, int first, int last, List& to) {
    const int step = first <= last ? 1 : -1;
    for (int i = first; i != last + step; i += step) to.push_back(from[i]);
}

}  // namespace

Turn::Turn(double angle_) : angle(angle_), cos(std::cos(angle_)), sin(std::sin(angle_)) {}

void Frame::turn_by(const Turn& by) {
    turn_ += by.angle;
    along_ = {by.cos * along_.x() - by.sin * along_.y(), by.sin * along_.x() + by.cos * along_.y()};
}

FoldedPart as_laid(const FoldedPart& part, bool face_down, bool right_first) {
    FoldedPart laid = part;
    if (face_down)
        for (double& a : laid.angle) a = -a;
    if (right_first)
        for (std::vector<double>* list : {&laid.flats, &laid.angle, &laid.radius, &laid.allowance})
            std::reverse(list->begin(), list->end());
    return laid;
}

BendSet as_laid(BendSet set, int bends, bool right_first) {
    if (!right_first) return set;
    BendSet laid = 0;
    for (int b = 0; b < bends; ++b)
        if (is_made(set, b)) laid |= BendSet{1} << (bends - 1 - b);
    return laid;
}

Side left_of(const FoldedPart& laid, int b) {
    Side side;
    side.thickness = laid.thickness;
    append_outwards(laid.flats, b, 0, side.flats);
    if (b == 0) return side;
    append_outwards(laid.angle, b - 1, 0, side.angle);
    append_outwards(laid.radius, b - 1, 0, side.radius);
    append_outwards(laid.allowance, b - 1, 0, side.allowance);
    add_turns(side);
    return side;
}

Side right_of(const FoldedPart& laid, int b) {
    const int last = laid.bends() - 1;
    Side side;
    side.thickness = laid.thickness;
    append_outwards(laid.flats, b + 1, last + 1, side.flats);
    if (b == last) return side;
    append_outwards(laid.angle, b + 1, last, side.angle);
    append_outwards(laid.radius, b + 1, last, side.radius);
    append_outwards(laid.allowance, b + 1, last, side.allowance);
    add_turns(side);
    return side;
}

BendSet bits_left_of(BendSet laid, int b) {
    BendSet bits = 0;
    for (int k = 0; k < b; ++k)
        if (is_made(laid, b - 1 - k)) bits |= BendSet{1} << k;
    return bits;
}

BendSet bits_right_of(BendSet laid, int b) {
    return laid >> (b + 1);
}

Frame frame_of(const Side& side, int group, BendSet made) {
    Frame f;
    for (int k = 0; k + 1 < group; ++k) {
        f.at += side.flats[k] * f.along();
        f = past_bend(side, k, is_made(made, k), f);
    }
    if (group > 0) f.at += side.flats[group - 1] * f.along();
    return f;
}

std::vector<clearance::Convex> pieces_of(const Side& side, int group, BendSet made, double skip) {
    std::vector<clearance::Convex> pieces;
    pieces.reserve(1 + (group > 0 ? pieces_of_bend(side.angle[group - 1]) : 0));
    Frame f = frame_of(side, group, made);
    double length = side.flats[group];
    bool straight = (made & ((BendSet{1} << group) - 1)) == 0;
    if (group > 0) {
        if (is_made(made, group - 1)) {
            add_arc(side, group - 1, f, pieces);
            f = past_bend(side, group - 1, true, f);
        } else {
            length += side.allowance[group - 1];
        }
    }
    if (straight) {
        const double left_out = std::clamp(skip - f.at.norm(), 0.0, length);
        f.at += left_out * f.along();
        length -= left_out;
    }
    if (length > 1e-6) pieces.push_back(straight_piece(f, length, side.thickness));
    return pieces;
}

double straight_length(const Side& side, BendSet made) {
    double length = side.flats[0];
    for (int k = 0; k + 1 < side.groups() && !is_made(made, k); ++k)
        length += side.allowance[k] + side.flats[k + 1];
    return length;
}

}  // namespace overbend::plan
