// A strip in pure bending as a recording, so that pictures and charts are those of a stroke.

#include <algorithm>
#include <cmath>

#include "scenes/window/bench/press.h"
#include "sim/material/pure_bending.h"
#include "sim/material/section.h"

namespace overbend::window {

namespace {

constexpr int layers = 15, elements = 60;
constexpr int steps_down = 24, steps_back = 14;

// The whole strip under one moment, its middle level and fixed.
stroke::State state_of(const material::BendingPoint& p, const stroke::Recording& r, stroke::Phase phase) {
    stroke::State s;
    s.phase = phase;
    s.travel = p.curvature;
    const std::size_t nodes = r.blank_position.size();
    s.x.resize(nodes), s.y.resize(nodes), s.theta.resize(nodes);
    const double middle = 0.5 * r.blank_position.back(), k = p.reference_curvature, G = p.stretch;
    for (std::size_t i = 0; i < nodes; ++i) {
        const double at = r.blank_position[i] - middle;
        s.theta[i] = k * at;
        // Along an arc of the mid-line, whose radius is G / k.
        s.x[i] = std::abs(k * at) < 1e-9 ? G * at : G / k * std::sin(k * at);
        s.y[i] = std::abs(k * at) < 1e-9 ? 0.0 : 2.0 * G / k * std::pow(std::sin(0.5 * k * at), 2);
    }
    s.stretch.assign(nodes - 1, G);
    s.curvature.assign(nodes - 1, k);
    for (std::size_t e = 0; e + 1 < nodes; ++e) {
        s.hoop_stress.insert(s.hoop_stress.end(), p.stress.begin(), p.stress.end());
        s.plastic_strain.insert(s.plastic_strain.end(), p.plastic_strain.begin(), p.plastic_strain.end());
    }
    return s;
}

}  // namespace

BentStrip bend_purely(const BenchSetup& setup, int metal, double curvature) {
    BentStrip bent;
    bent.metal = setup.metals[static_cast<std::size_t>(metal)];
    const material::Card card = card_of(bent.metal);
    const double most = std::max(curvature, 1e-6 / setup.thickness);
    std::vector<double> way;
    for (int i = 0; i <= steps_down; ++i) way.push_back(most * i / steps_down);
    const double stays =
        material::bend_in_pure_moment(card, setup.thickness, {most}, layers)[0].free_curvature;
    for (int i = 1; i <= steps_back; ++i) way.push_back(most + (stays - most) * i / steps_back);
    const auto points = material::bend_in_pure_moment(card, setup.thickness, way, layers);

    stroke::Recording& r = bent.recording;
    r.thickness = setup.thickness;
    const double length = pure_length(setup);
    for (int i = 0; i <= elements; ++i) r.blank_position.push_back(length * i / elements);
    const material::Layers section = material::gauss_layers(setup.thickness, layers);
    r.layer_height = section.height, r.layer_weight = section.weight;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const int n = static_cast<int>(i);
        const stroke::Phase phase = n == 0                        ? stroke::Phase::placed
                                    : n < steps_down              ? stroke::Phase::pressing
                                    : n == steps_down             ? stroke::Phase::held
                                    : n < steps_down + steps_back ? stroke::Phase::retracting
                                                                  : stroke::Phase::free;
        r.states.push_back(state_of(points[i], r, phase));
    }
    const auto turn = [&](const material::BendingPoint& p) { return p.reference_curvature * length; };
    const auto radius = [&](const material::BendingPoint& p) {
        return p.curvature > 1e-9 ? 1.0 / p.curvature - 0.5 * p.thickness : 0.0;
    };
    bent.loaded = turn(points[steps_down]), bent.free = turn(points.back());
    bent.radius_loaded = radius(points[steps_down]), bent.radius_free = radius(points.back());
    bent.section_at = 0.5 * length;
    return bent;
}

}  // namespace overbend::window
