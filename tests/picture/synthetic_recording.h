// Recordings for checks of pictures, made by geometry alone: a strip of even thickness wrapped round a nose
// in a V die. Shapes close to the real thing, forces and stresses invented.
//
// Units  mm, rad, MPa, N per mm.

#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "sim/stroke/recording.h"
#include "sim/tool/die.h"
#include "sim/tool/punch.h"
#include "sim/units.h"

namespace overbend::tests {

struct SyntheticStroke {
    double thickness = 1.0;
    double length = 42.0;     // of the blank
    double bend_line = 18.0;  // from the blank's left end
    double end_angle = 1.62;  // bend angle under load, about 93 degrees
    double springback = 0.045;
    double old_bend_line = -1.0;  // a finished bend from an earlier stroke; none below 0
    double old_angle = 0.0;
    bool turned = false;  // end for end: the blank's left end lies to the right
    int pressing_states = 24;
    double shank_width = 12.0;  // of the punch
    double die_width = 30.0;
};

namespace detail {

constexpr double die_opening = 8.0;
constexpr double shoulder_radius = 1.0;
constexpr double nose_radius = 1.0;
constexpr int layers = 11;
constexpr double modulus = 226000.0;  // MPa, plane strain
constexpr double yield = 420.0;       // MPa, plane strain

inline double ramp(double s, double length) {
    return std::clamp(s / length + 0.5, 0.0, 1.0);
}

// Radius of the bend's mid-line: wide at first, round the nose at the end.
inline double bend_radius(double angle, double end_angle) {
    const double left = 1.0 - std::min(1.0, angle / end_angle);
    return detail::nose_radius + 0.75 + 9.0 * left * left;
}

inline std::vector<double> mesh(const SyntheticStroke& stroke) {
    std::vector<double> s{0.0};
    while (s.back() < stroke.length - 1e-9) {
        const double at = s.back();
        const double away = std::min(std::abs(at - stroke.bend_line),
                                     stroke.old_bend_line < 0.0 ? 1e9 : std::abs(at - stroke.old_bend_line));
        s.push_back(std::min(stroke.length, at + (away < 7.0 ? 0.25 : 0.75)));
    }
    return s;
}

// Directions of the nodes, in the order of the blank, 0 at the stroke's bend line.
inline double direction(const SyntheticStroke& stroke, double s, double angle, double radius) {
    double theta = angle * (ramp(s - stroke.bend_line, std::max(radius * angle, 0.5)) - 0.5);
    if (stroke.old_bend_line >= 0.0) {
        const double length = 1.75 * std::abs(stroke.old_angle);
        theta += stroke.old_angle * (ramp(s - stroke.old_bend_line, length) -
                                     ramp(stroke.bend_line - stroke.old_bend_line, length));
    }
    return theta;
}

// The mid-line, its point at the bend line on the axis x = 0 and its lower surface on the shoulders.
inline void lay(const SyntheticStroke& stroke, const std::vector<double>& s, double angle,
                stroke::State& state) {
    const double radius = bend_radius(angle, stroke.end_angle);
    const size_t n = s.size();
    state.x.assign(n, 0.0);
    state.y.assign(n, 0.0);
    state.theta.assign(n, 0.0);
    for (size_t i = 0; i < n; ++i) state.theta[i] = direction(stroke, s[i], angle, radius);
    double x_line = 0.0;
    double y_line = 0.0;
    double x = 0.0;
    double y = 0.0;
    for (size_t i = 0; i + 1 < n; ++i) {
        state.x[i] = x;
        state.y[i] = y;
        const int parts = 40;
        for (int p = 0; p < parts; ++p) {
            const double step = (s[i + 1] - s[i]) / parts;
            const double theta = direction(stroke, s[i] + (p + 0.5) * step, angle, radius);
            if (s[i] + p * step <= stroke.bend_line) {
                x_line = x;
                y_line = y;
            }
            x += step * std::cos(theta);
            y += step * std::sin(theta);
        }
    }
    state.x[n - 1] = x;
    state.y[n - 1] = y;
    // The right flat's mid-line is t/2 and the shoulder's radius away from the shoulder's centre.
    const double half = 0.5 * angle;
    const double chord_x = radius * std::sin(half);
    const double chord_y = radius * (1.0 - std::cos(half));
    const double away = shoulder_radius + 0.5 * stroke.thickness;
    const double lift =
        -shoulder_radius + away / std::cos(half) + (chord_x - 0.5 * die_opening) * std::tan(half) - chord_y;
    for (size_t i = 0; i < n; ++i) {
        state.x[i] -= x_line;
        state.y[i] += lift - y_line;
    }
    state.travel = -lift + 0.5 * stroke.thickness;
}

inline double invented_stress(double strain) {
    return std::clamp(modulus * strain, -yield, yield) + 300.0 * strain;
}

// Stress of a layer that has been bent to `now`, after having been bent to `most` (1/mm).
inline double layer_stress(double z, double now, double most) {
    return invented_stress(-z * most) + modulus * z * (most - now);
}

inline void fill_layers(const stroke::Recording& r, const stroke::State* loaded, stroke::State& state) {
    const size_t elements = state.x.size() - 1;
    state.stretch.assign(elements, 1.0);
    state.curvature.resize(elements);
    state.hoop_stress.clear();
    state.plastic_strain.clear();
    for (size_t e = 0; e < elements; ++e) {
        const double length = std::abs(r.blank_position[e + 1] - r.blank_position[e]);
        state.curvature[e] = (state.theta[e + 1] - state.theta[e]) / length;
        const double most = loaded ? loaded->curvature[e] : state.curvature[e];
        for (const double z : r.layer_height) {
            const double stress = layer_stress(z, state.curvature[e], most);
            state.hoop_stress.push_back(static_cast<float>(std::clamp(stress, -560.0, 560.0)));
            state.plastic_strain.push_back(
                static_cast<float>(std::max(0.0, std::abs(z * most) - yield / modulus)));
        }
    }
}

// Nose and shoulders press where the geometry has them touch.
inline void add_contacts(const SyntheticStroke& stroke, double angle, double force, stroke::State& state) {
    state.punch_force = force;
    state.contacts.clear();
    if (force <= 0.0) return;
    state.contacts.push_back({{0.0, stroke.thickness - state.travel}, {0.0, -force}, 0});
    for (const double side : {-1.0, 1.0}) {
        const Eigen::Vector2d normal(-side * std::sin(0.5 * angle), std::cos(0.5 * angle));
        const Eigen::Vector2d centre(side * 0.5 * die_opening, -shoulder_radius);
        state.contacts.push_back(
            {centre + shoulder_radius * normal, 0.5 * force / std::cos(0.5 * angle) * normal, 1});
    }
}

inline tool::ToolSet tools(const SyntheticStroke& stroke) {
    tool::VeePunch punch;
    punch.angle = 60.0 * degree;
    punch.nose_radius = nose_radius;
    punch.height = 60.0;
    punch.shank_width = stroke.shank_width;
    tool::VeeDie die;
    die.faces = {{80.0 * degree, die_opening, shoulder_radius, 0.6}};
    die.width = stroke.die_width;
    die.height = 40.0;
    return {{"vee-60", tool::Role::punch, make_outline(punch), {0.0, stroke.thickness}},
            {"two-way", tool::Role::die, make_outline(die, 1), {0.0, 0.0}}};
}

inline void turn_end_for_end(stroke::Recording& r) {
    std::reverse(r.blank_position.begin(), r.blank_position.end());
    const size_t m = r.layer_height.size();
    for (stroke::State& s : r.states) {
        std::reverse(s.x.begin(), s.x.end());
        std::reverse(s.y.begin(), s.y.end());
        std::reverse(s.theta.begin(), s.theta.end());
        for (double& x : s.x) x = -x;
        for (double& theta : s.theta) theta = -theta;
        std::reverse(s.curvature.begin(), s.curvature.end());
        for (auto* values : {&s.hoop_stress, &s.plastic_strain}) {
            std::vector<float> turned;
            for (size_t e = values->size() / m; e-- > 0;)
                turned.insert(turned.end(), values->begin() + e * m, values->begin() + (e + 1) * m);
            *values = turned;
        }
    }
}

}  // namespace detail

inline stroke::Recording synthetic_recording(const SyntheticStroke& stroke = {}) {
    stroke::Recording r;
    r.thickness = stroke.thickness;
    r.blank_position = detail::mesh(stroke);
    for (int k = 0; k < detail::layers; ++k) {
        // Close to Gauss heights: denser towards the surfaces.
        r.layer_height.push_back(-0.5 * stroke.thickness * std::cos(pi * (k + 0.7) / (detail::layers + 0.4)));
        r.layer_weight.push_back(stroke.thickness / detail::layers);
    }
    r.tools = detail::tools(stroke);

    const auto state = [&](stroke::Phase phase, double angle, double force, const stroke::State* loaded) {
        stroke::State s;
        s.phase = phase;
        detail::lay(stroke, r.blank_position, angle, s);
        detail::fill_layers(r, loaded, s);
        detail::add_contacts(stroke, angle, force, s);
        r.states.push_back(std::move(s));
    };
    state(stroke::Phase::placed, 0.0, 0.0, nullptr);
    for (int i = 1; i <= stroke.pressing_states; ++i) {
        const double part = static_cast<double>(i) / stroke.pressing_states;
        state(stroke::Phase::pressing, part * stroke.end_angle,
              95.0 * std::min(1.0, 5.0 * part) * (1.0 - 0.25 * part * part), nullptr);
    }
    state(stroke::Phase::held, stroke.end_angle, 71.0, nullptr);
    const stroke::State loaded = r.states.back();
    for (const double part : {0.33, 0.66}) {
        state(stroke::Phase::retracting, stroke.end_angle - part * stroke.springback, 71.0 * (1.0 - part),
              &loaded);
    }
    state(stroke::Phase::free, stroke.end_angle - stroke.springback, 0.0, &loaded);
    if (stroke.turned) detail::turn_end_for_end(r);
    return r;
}

}  // namespace overbend::tests
