#include "sim/stroke/pressed_part.h"

#include <algorithm>
#include <utility>

#include "sim/strip/place.h"
#include "sim/stroke/increment.h"
#include "sim/stroke/recorder.h"

namespace overbend::stroke {

namespace {

// The nodes that tools may press, and two elements on either side whose strain contact looks at.
strip::Piece pressed_piece(const StrokeScene& scene) {
    const std::vector<double>& at = scene.strip.blank_position;
    if (scene.weight > 0.0) return {0, scene.strip.nodes() - 1};  // all of it is loaded
    strip::Piece piece{scene.strip.nodes() - 1, 0};
    for (int e = 0; e < scene.strip.elements(); ++e) {
        const double middle = 0.5 * (at[e] + at[e + 1]);
        if (middle < scene.zone.low || middle > scene.zone.high) continue;
        piece.first = std::min(piece.first, e);
        piece.last = std::max(piece.last, e + 1);
    }
    piece.first = std::max(0, piece.first - 2);
    piece.last = std::min(scene.strip.nodes() - 1, piece.last + 2);
    return piece;
}

// The scene of the piece alone. The stop's flats may lie beyond its ends: what the strip turns between there
// and here does not change.
StrokeScene scene_of(const StrokeScene& whole, const strip::Piece& piece) {
    StrokeScene scene = whole;
    scene.strip = strip::take_out(whole.strip, piece);
    const double a = scene.strip.blank_position.front(), b = scene.strip.blank_position.back();
    const auto inside = [&](double at) { return std::clamp(at, std::min(a, b), std::max(a, b)); };
    scene.stop.left = inside(whole.stop.left), scene.stop.right = inside(whole.stop.right);
    if (scene.stop.kind == StopKind::free_angle)
        scene.stop.value += strip::turn_between(scene.strip.blank_position, scene.strip.theta,
                                                scene.stop.left, scene.stop.right) -
                            strip::turn_between(whole.strip.blank_position, whole.strip.theta,
                                                whole.stop.left, whole.stop.right);
    return scene;
}

// A state of the piece as one of the whole strip; beyond the piece's ends nothing but the place changes.
void widen(State& s, const State& placed, const strip::StripState& whole, const strip::Piece& piece) {
    strip::carry_ends(whole, piece, s.x, s.y, s.theta);
    const auto fill = [&](auto& values, const auto& of_placed, long each) {
        auto all = of_placed;
        std::copy(values.begin(), values.end(), all.begin() + piece.first * each);
        values.swap(all);
    };
    const long m = whole.layers();
    fill(s.warp, placed.warp, material::warps);
    fill(s.stretch, placed.stretch, 1);
    fill(s.curvature, placed.curvature, 1);
    fill(s.hoop_stress, placed.hoop_stress, m);
    fill(s.plastic_strain, placed.plastic_strain, m);
}

// The whole strip as it was placed, with its stresses.
State placed_state(const StrokeScene& scene, const SolverOptions& options) {
    IncrementSolver solver(scene, options);
    SolverState c;
    c.strip = scene.strip;
    solver.start(c);
    Recording r;
    record(r, c, Phase::placed);
    return r.states.front();
}

// Holders, ram, bed and gauge touch no strip that is pressed as it should be: they are left out of the
// equations. They stand behind the tools that press.
StrokeScene without_bystanders(const StrokeScene& scene) {
    StrokeScene pressing = scene;
    while (!pressing.tools.empty() && !tool::presses(pressing.tools.back().role)) pressing.tools.pop_back();
    return pressing;
}

}  // namespace

Pressed pressed_part(const StrokeScene& whole) {
    const StrokeScene scene = without_bystanders(whole);
    // Without gravity nothing loads the strip beyond the forming zone: it is left out of the equations,
    // exactly.
    const strip::Piece piece = pressed_piece(scene);
    return {scene_of(scene, piece), piece};
}

StrokeResult on_whole_strip(StrokeResult result, const StrokeScene& whole, const strip::Piece& piece,
                            const SolverOptions& options) {
    const State placed = placed_state(without_bystanders(whole), options);
    for (State& s : result.recording.states) widen(s, placed, whole.strip, piece);
    result.recording.blank_position = whole.strip.blank_position;
    result.recording.tools = whole.tools;
    strip::StripState free = whole.strip;
    strip::put_back(free, piece, result.free);
    result.free = std::move(free);
    return result;
}

}  // namespace overbend::stroke
