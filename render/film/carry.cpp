#include "render/film/carry.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "render/picture/strip_shape.h"
#include "sim/units.h"

namespace overbend::film {

using namespace picture;

namespace {

constexpr int samples = 60;

using Places = std::vector<Place>;

Place middle_of(const Places& places) {
    Place sum = Place::Zero();
    for (const Place& p : places) sum += p;
    return sum / static_cast<double>(places.size());
}

// Points of the mid-line, evenly along the blank from its left end.
Places along_blank(const stroke::Recording& recording, const stroke::State& state) {
    const auto [low, high] = std::minmax(recording.blank_position.front(), recording.blank_position.back());
    Places places;
    for (int i = 0; i <= samples; ++i)
        places.push_back(spot_on(recording, state, low + (high - low) * i / samples).at);
    return places;
}

Eigen::Matrix2d turned_by(double angle) {
    Eigen::Matrix2d m;
    m << std::cos(angle), -std::sin(angle), std::sin(angle), std::cos(angle);
    return m;
}

// The turning part of the way; whole at 1. Seen from the side a strip that is turned end for end gets shorter
// and then longer the other way round; turned over, lower and then the other way up.
Eigen::Matrix2d turning_matrix(Turning turning, double part) {
    const double seen = std::cos(pi * part);
    Eigen::Matrix2d m = Eigen::Matrix2d::Identity();
    if (turning == Turning::end_for_end) m(0, 0) = seen;
    if (turning == Turning::over) m(1, 1) = seen;
    if (turning == Turning::both) m = turned_by(pi * part);
    return m;
}

// The turn in the plane that brings the turned shape closest to the one after, and what distance is left.
struct Fit {
    double turn = 0.0;
    double left = 0.0;  // mm2, mean square
};

Fit fit(Turning turning, const Places& before, const Places& after) {
    const Place from = middle_of(before);
    const Place to = middle_of(after);
    const Eigen::Matrix2d turned = turning_matrix(turning, 1.0);
    double along = 0.0;
    double across = 0.0;
    double squares = 0.0;
    for (size_t i = 0; i < before.size(); ++i) {
        const Place a = turned * (before[i] - from);
        const Place b = after[i] - to;
        along += a.dot(b);
        across += a.x() * b.y() - a.y() * b.x();
        squares += a.squaredNorm() + b.squaredNorm();
    }
    const double best = std::hypot(along, across);
    return {std::atan2(across, along), (squares - 2.0 * best) / static_cast<double>(before.size())};
}

bool runs_left(const stroke::Recording& r) {
    return r.blank_position.back() < r.blank_position.front();
}

}  // namespace

Carry find_carry(const stroke::Recording& before, const stroke::Recording& after) {
    const Places a = along_blank(before, before.states.back());
    const Places b = along_blank(after, after.states.front());
    // The order of the nodes shows whether it was turned end for end; its shape, whether it was turned over.
    const bool reversed = runs_left(before) != runs_left(after);
    const Turning plain = reversed ? Turning::end_for_end : Turning::none;
    const Turning other = reversed ? Turning::both : Turning::over;
    const Fit plain_fit = fit(plain, a, b);
    const Fit other_fit = fit(other, a, b);
    // A strip that is still flat fits both ways: then the plainer one is shown.
    const double noticed = 0.01 * before.thickness * before.thickness;
    const bool over = other_fit.left + noticed < plain_fit.left;
    Carry carry;
    carry.turning = over ? other : plain;
    carry.turn = over ? other_fit.turn : plain_fit.turn;
    if (carry.turning == Turning::both) carry.turn = std::remainder(pi + carry.turn, 2.0 * pi);
    carry.from = middle_of(a);
    carry.to = middle_of(b);
    return carry;
}

StripMotion motion_at(const Carry& carry, const Carried& carried, const Hold& before, const Hold& after) {
    const double way = carried.moved;
    const double growth = 1.0 + carried.off * ((1.0 - way) * before.growth + way * after.growth);
    StripMotion motion;
    motion.turn = carry.turning == Turning::both
                      ? turned_by(carry.turn * carried.turned)
                      : turned_by(carry.turn * way) * turning_matrix(carry.turning, carried.turned);
    motion.turn *= growth;
    motion.shift = (1.0 - way) * carry.from + way * carry.to +
                   carried.off * ((1.0 - way) * before.shift + way * after.shift) - motion.turn * carry.from;
    return motion;
}

}  // namespace overbend::film
