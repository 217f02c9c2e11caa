#include "sim/strip/piece.h"

#include <algorithm>
#include <cmath>

namespace overbend::strip {

namespace {

// Appends the whole strip's nodes from ... to, moved as the node `at` has moved to (x, y, theta).
void append_moved(const StripState& whole, int from, int to, int at, double x, double y, double theta,
                  std::vector<double>& xs, std::vector<double>& ys, std::vector<double>& thetas) {
    const double turn = theta - whole.theta[at], c = std::cos(turn), s = std::sin(turn);
    for (int i = from; i <= to; ++i) {
        const double dx = whole.x[i] - whole.x[at], dy = whole.y[i] - whole.y[at];
        xs.push_back(x + c * dx - s * dy);
        ys.push_back(y + s * dx + c * dy);
        thetas.push_back(whole.theta[i] + turn);
    }
}

}  // namespace

StripState take_out(const StripState& whole, const Piece& piece) {
    StripState part = whole;
    for (std::vector<double>* v : {&part.blank_position, &part.x, &part.y, &part.theta})
        *v = std::vector<double>(v->begin() + piece.first, v->begin() + piece.last + 1);
    part.warp.assign(whole.warp.begin() + material::warps * piece.first,
                     whole.warp.begin() + material::warps * (piece.last + 1));
    const long m = whole.layers();
    part.history.assign(whole.history.begin() + piece.first * m, whole.history.begin() + piece.last * m);
    return part;
}

void carry_ends(const StripState& whole, const Piece& piece, std::vector<double>& x, std::vector<double>& y,
                std::vector<double>& theta) {
    std::vector<double> xs, ys, thetas;
    append_moved(whole, 0, piece.first - 1, piece.first, x.front(), y.front(), theta.front(), xs, ys, thetas);
    xs.insert(xs.end(), x.begin(), x.end());
    ys.insert(ys.end(), y.begin(), y.end());
    thetas.insert(thetas.end(), theta.begin(), theta.end());
    append_moved(whole, piece.last + 1, whole.nodes() - 1, piece.last, x.back(), y.back(), theta.back(), xs,
                 ys, thetas);
    x.swap(xs), y.swap(ys), theta.swap(thetas);
}

void put_back(StripState& whole, const Piece& piece, const StripState& part) {
    std::vector<double> x = part.x, y = part.y, theta = part.theta;
    carry_ends(whole, piece, x, y, theta);
    whole.x.swap(x), whole.y.swap(y), whole.theta.swap(theta);
    std::copy(part.warp.begin(), part.warp.end(), whole.warp.begin() + material::warps * piece.first);
    const long m = whole.layers();
    std::copy(part.history.begin(), part.history.end(), whole.history.begin() + piece.first * m);
}

}  // namespace overbend::strip
