// A strip in pure bending as a recording, so that pictures and charts are those of a stroke.

#include <algorithm>
#include <cmath>

#include "scenes/window/bench/press.h"
#include "sim/material/pure_bending.h"
#include "sim/material/section.h"

namespace overbend::window {

namespace {

constexpr int layers = 15, elements = 60;
constexpr int steps_of_move = 24, steps_back = 14;

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

// Curvatures through all moves, each in steps; where nothing is asked, a little is bent all the same, so that
// there is a path.
struct Course {
    std::vector<double> curvatures{0.0};
    double free = 0.0;  // after the last of them
    bool let_go = false;
    int presses = 1;

    void go_to(double curvature, int steps) {
        const double from = curvatures.back();
        for (int i = 1; i <= steps; ++i) curvatures.push_back(from + (curvature - from) * i / steps);
    }
};

Course course_of(const material::Card& card, double thickness, const std::vector<BenchMove>& moves) {
    Course c;
    for (std::size_t i = 0; i < moves.size(); ++i) {
        if (!moves[i].let_go) {
            if (c.let_go) ++c.presses;
            c.let_go = false;
            c.go_to(moves[i].way, steps_of_move);
            continue;
        }
        if (c.let_go) continue;
        c.let_go = true;
        if (i + 1 == moves.size()) break;  // what comes back from there follows anyway
        c.go_to(material::bend_in_pure_moment(card, thickness, c.curvatures, layers).back().free_curvature,
                steps_back);
    }
    if (c.curvatures.size() == 1) c.go_to(1e-6 / thickness, steps_of_move);
    c.free = material::bend_in_pure_moment(card, thickness, c.curvatures, layers).back().free_curvature;
    return c;
}

}  // namespace

BentStrip bend_purely(const BenchSetup& setup, int metal, const std::vector<BenchMove>& moves,
                      double released) {
    BentStrip bent;
    bent.metal = setup.metals[static_cast<std::size_t>(metal)];
    const material::Card card = card_of(bent.metal);
    Course course = course_of(card, setup.thickness, moves);
    const int held = static_cast<int>(course.curvatures.size()) - 1;
    course.go_to(course.free, steps_back);
    const auto points = material::bend_in_pure_moment(card, setup.thickness, course.curvatures, layers);

    stroke::Recording& r = bent.recording;
    r.thickness = setup.thickness;
    const double length = pure_length(setup);
    for (int i = 0; i <= elements; ++i) r.blank_position.push_back(length * i / elements);
    const material::Layers section = material::gauss_layers(setup.thickness, layers);
    r.layer_height = section.height, r.layer_weight = section.weight;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const int n = static_cast<int>(i);
        const stroke::Phase phase = n == 0                  ? stroke::Phase::placed
                                    : n < held              ? stroke::Phase::pressing
                                    : n == held             ? stroke::Phase::held
                                    : n < held + steps_back ? stroke::Phase::retracting
                                                            : stroke::Phase::free;
        r.states.push_back(state_of(points[i], r, phase));
    }
    const auto turn = [&](const material::BendingPoint& p) { return p.reference_curvature * length; };
    const auto radius = [&](const material::BendingPoint& p) {
        const double k = std::abs(p.curvature);
        return k > 1e-9 ? 1.0 / k - 0.5 * p.thickness : 0.0;
    };
    bent.loaded = turn(points[static_cast<std::size_t>(held)]), bent.free = turn(points.back());
    bent.radius_loaded = radius(points[static_cast<std::size_t>(held)]),
    bent.radius_free = radius(points.back());
    bent.section_at = 0.5 * length;
    bent.presses = course.presses;
    bent.let_go = course.let_go || released >= 1.0;
    bent.instant = held + (course.let_go ? 1.0 : released) * steps_back;
    return bent;
}

}  // namespace overbend::window
