#include "sim/clearance/pieces.h"

#include <algorithm>
#include <cmath>

#include "sim/strip/place.h"

namespace overbend::clearance {

namespace {

constexpr double most_turn = 0.12;  // rad within a span

// Turn within an element, the most in any of the states.
double turn_of(const stroke::Recording& r, const std::vector<int>& states, std::size_t element) {
    double most = 0.0;
    for (const int s : states)
        most = std::max(most, std::abs(r.states[s].theta[element + 1] - r.states[s].theta[element]));
    return most;
}

}  // namespace

std::vector<Span> spans_outside(const stroke::Recording& r, const std::vector<int>& states,
                                const stroke::FormingZone& zone) {
    std::vector<Span> spans;
    const bool falling = r.blank_position.front() > r.blank_position.back();
    double turned = 0.0;
    bool open = false;  // the last span may go on
    const auto add = [&](double left, double right, double turn) {
        if (!(std::abs(right - left) > 1e-9)) return;
        if (open && turned + turn <= most_turn) {
            spans.back().right = right, turned += turn;
            return;
        }
        spans.push_back({left, right});
        turned = turn, open = true;
    };
    for (std::size_t e = 0; e + 1 < r.blank_position.size(); ++e) {
        const double left = r.blank_position[e], right = r.blank_position[e + 1];
        const double low = std::min(left, right), high = std::max(left, right);
        const double turn = turn_of(r, states, e);
        if (high <= zone.low || low >= zone.high) {
            add(left, right, turn);
            continue;
        }
        // cut short by the zone, on either side of it or on both
        const double before = std::min(high, zone.low), after = std::max(low, zone.high);
        if (!falling && before > low) add(low, before, turn);
        if (falling && after < high) add(high, after, turn);
        open = false;
        if (!falling && after < high) add(after, high, turn);
        if (falling && before > low) add(before, low, turn);
    }
    return spans;
}

Convex piece_of(const stroke::Recording& r, int state, const Span& span) {
    const stroke::State& s = r.states[state];
    const strip::MidPoint a = strip::mid_point(r.blank_position, s.x, s.y, s.theta, span.left);
    const strip::MidPoint b = strip::mid_point(r.blank_position, s.x, s.y, s.theta, span.right);
    const double half = 0.5 * r.thickness;
    const Vec2 from(a.x, a.y), to(b.x, b.y);
    const Vec2 up_a = half * Vec2(-std::sin(a.theta), std::cos(a.theta));
    const Vec2 up_b = half * Vec2(-std::sin(b.theta), std::cos(b.theta));
    Convex piece;
    piece.corners = {from - up_a, to - up_b, to + up_b, from + up_a};
    return piece;
}

double blank_position_of(const Span& span, const Convex& piece, const Vec2& at) {
    const Vec2 from = 0.5 * (piece.corners[0] + piece.corners[3]),
               to = 0.5 * (piece.corners[1] + piece.corners[2]);
    const Vec2 along = to - from;
    const double share = std::clamp((at - from).dot(along) / along.squaredNorm(), 0.0, 1.0);
    return span.left + share * (span.right - span.left);
}

}  // namespace overbend::clearance
