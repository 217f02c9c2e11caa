#include "sim/strip/place.h"

#include <algorithm>
#include <cmath>

#include "sim/units.h"

namespace overbend::strip {

namespace {

void reverse_elements(std::vector<material::LayerHistory>& v, int elements, int layers) {
    for (int e = 0; e < elements / 2; ++e)
        std::swap_ranges(v.begin() + static_cast<long>(e) * layers,
                         v.begin() + static_cast<long>(e + 1) * layers,
                         v.begin() + static_cast<long>(elements - 1 - e) * layers);
}

void reverse_layers(std::vector<material::LayerHistory>& v, int elements, int layers) {
    for (int e = 0; e < elements; ++e)
        std::reverse(v.begin() + static_cast<long>(e) * layers,
                     v.begin() + static_cast<long>(e + 1) * layers);
}

// Either turn mirrors the sections.
void reverse_shear(std::vector<material::LayerHistory>& v) {
    for (material::LayerHistory& layer : v) {
        layer.shear_stress = -layer.shear_stress;
        for (double& back : layer.shear_backstress) back = -back;
    }
}

// The element that holds a blank position, and how far along it: 0 at its left node.
struct Along {
    int element = 0;
    double share = 0.0;
};
Along find(const std::vector<double>& blank_position, double at) {
    const int elements = static_cast<int>(blank_position.size()) - 1;
    const bool rising = blank_position.back() > blank_position.front();
    int e = 0;
    while (e + 1 < elements && (rising ? blank_position[e + 1] < at : blank_position[e + 1] > at)) ++e;
    return {e, (at - blank_position[e]) / (blank_position[e + 1] - blank_position[e])};
}

double theta_at(const std::vector<double>& blank_position, const std::vector<double>& theta, double at) {
    const Along a = find(blank_position, at);
    return theta[a.element] + a.share * (theta[a.element + 1] - theta[a.element]);
}

}  // namespace

void turn_over(StripState& s) {
    for (double& y : s.y) y = -y;
    for (double& theta : s.theta) theta = -theta;
    reverse_layers(s.history, s.elements(), s.layers());
    reverse_shear(s.history);
    // Along the strip a place keeps its warp: of the shapes, the even ones keep their share and the odd ones
    // change its sign.
    for (int i = 0; i < s.nodes(); ++i) s.warp[material::warps * i + 1] *= -1.0;
    s.face_down = !s.face_down;
}

void turn_end_for_end(StripState& s) {
    for (double& x : s.x) x = -x;
    for (double& theta : s.theta) theta = -theta;
    for (std::vector<double>* v : {&s.x, &s.y, &s.theta, &s.blank_position})
        std::reverse(v->begin(), v->end());
    reverse_elements(s.history, s.elements(), s.layers());
    reverse_shear(s.history);
    for (int i = 0; i < s.nodes() / 2; ++i)
        std::swap_ranges(s.warp.begin() + material::warps * i, s.warp.begin() + material::warps * (i + 1),
                         s.warp.begin() + material::warps * (s.nodes() - 1 - i));
    for (double& warp : s.warp) warp = -warp;
    s.turned = !s.turned;
}

void move(StripState& s, double angle, double about_x, double about_y, double shift_x, double shift_y) {
    const double c = std::cos(angle), n = std::sin(angle);
    for (int i = 0; i < s.nodes(); ++i) {
        const double dx = s.x[i] - about_x, dy = s.y[i] - about_y;
        s.x[i] = about_x + c * dx - n * dy + shift_x;
        s.y[i] = about_y + n * dx + c * dy + shift_y;
        s.theta[i] += angle;
    }
}

MidPoint mid_point(const std::vector<double>& blank_position, const std::vector<double>& x,
                   const std::vector<double>& y, const std::vector<double>& theta, double at) {
    const Along a = find(blank_position, at);
    const int e = a.element;
    MidPoint m;
    m.theta = theta[e] + a.share * (theta[e + 1] - theta[e]);
    // The arc between the nodes bulges out from the chord (see sim/stroke/contact.h).
    const double length = std::abs(blank_position[e + 1] - blank_position[e]);
    const double bulge = 0.5 * length * a.share * (1.0 - a.share) * (theta[e] - theta[e + 1]);
    m.x = x[e] + a.share * (x[e + 1] - x[e]) - bulge * std::sin(m.theta);
    m.y = y[e] + a.share * (y[e + 1] - y[e]) + bulge * std::cos(m.theta);
    return m;
}

MidPoint mid_point(const StripState& s, double at) {
    return mid_point(s.blank_position, s.x, s.y, s.theta, at);
}

double turn_between(const std::vector<double>& blank_position, const std::vector<double>& theta, double a,
                    double b) {
    const double at_a = theta_at(blank_position, theta, a), at_b = theta_at(blank_position, theta, b);
    const bool a_is_left = (blank_position.back() > blank_position.front()) == (a < b);
    return a_is_left ? at_b - at_a : at_a - at_b;
}

void level(StripState& s, double at, double half_span, double at_x) {
    const double low = std::min(s.blank_position.front(), s.blank_position.back());
    const double high = std::max(s.blank_position.front(), s.blank_position.back());
    MidPoint left = mid_point(s, std::max(low, at - half_span));
    MidPoint right = mid_point(s, std::min(high, at + half_span));
    if (s.turned) std::swap(left, right);
    // theta counts whole turns; the chord's angle is taken near the section's turn at the position itself.
    const MidPoint here = mid_point(s, at);
    double chord = std::atan2(right.y - left.y, right.x - left.x);
    chord += 2.0 * pi * std::round((here.theta - chord) / (2.0 * pi));
    move(s, -chord, here.x, here.y, at_x - here.x, -here.y);
}

}  // namespace overbend::strip
