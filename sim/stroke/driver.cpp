#include "sim/stroke/driver.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <iterator>
#include <utility>

#include "sim/strip/place.h"
#include "sim/stroke/recorder.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

namespace {

double largest_curvature(const SolverState& c) {
    double most = 0.0;
    for (const double k : c.curvature) most = std::max(most, std::abs(k));
    return most;
}

double largest_stretch(const SolverState& c) {
    return *std::max_element(c.stretch.begin(), c.stretch.end());
}

// What is left of the balance of all contact forces on the strip, in the direction of the ram.
double unbalanced(const SolverState& c, double weight) {
    double sum = -weight;
    for (const ContactForce& f : c.contacts) sum += f.force.y();
    return std::abs(sum);
}

}  // namespace

Driver::Driver(const StrokeScene& scene, const StrokeOptions& options)
    : scene_(scene), options_(options), solver_(scene, options.solver) {
    now_.strip = scene.strip;
    solver_.start(now_);
    in_equilibrium_ = solver_.apply_standing_loads(now_);
    sense_ = scene.stop.kind == StopKind::free_angle && scene.stop.value < 0.0 ? -1.0 : 1.0;
    wanted_ = sense_ * scene.stop.value;
    result_.recording = begin_recording(scene.strip, scene.tools);
    increment_ = limits::first_increment * scene.strip.thickness;
}

// The stroke ends here, with or without a result.
bool Driver::end_at(Outcome outcome, const char* what) {
    result_.outcome = outcome;
    char text[240];
    std::snprintf(text, sizeof text, "%s at %.3f mm of travel, with %.1f N/mm on the punch", what,
                  now_.travel, now_.punch_force);
    result_.reason = text;
    return true;
}

bool Driver::fail(Outcome outcome, const char* what) {
    end_at(outcome, what);
    return false;
}

void Driver::keep(Phase phase) {
    if (!result_.curve.empty() && result_.curve.back().travel == now_.travel) return;  // it is kept already
    result_.curve.push_back({now_.travel, now_.punch_force});
    now_.curve_points = static_cast<int>(result_.curve.size());
    if (!options_.record) return;
    const double spacing = options_.record_every * scene_.strip.thickness;
    const std::vector<State>& states = result_.recording.states;
    const bool turn = states.empty() || states.back().phase != phase;
    if (turn || std::abs(states.back().travel - now_.travel) >= spacing)
        record(result_.recording, now_, phase);
    now_.recorded = static_cast<int>(states.size());
}

// Takes up an earlier condition again and forgets what was kept since.
void Driver::go_back(const SolverState& c) {
    now_ = c;
    result_.recording.states.resize(c.recorded);
    result_.curve.resize(c.curve_points);
}

// Whether tools squeeze the strip with this force or more, over the yield force.
bool Driver::squeezed(double force) const {
    return now_.squeeze > force * solver_.force_scale();
}

bool Driver::goes_on() {
    if (!options_.progress || options_.progress(now_.travel, now_.punch_force)) return true;
    return fail(Outcome::cancelled, "stopped on request");
}

// The increment that follows an accepted one of this size, by what happened to the strip in it alone: how
// the equilibrium was found must not move the answer.
double Driver::next_increment(double move, double pressed) const {
    const double t = scene_.strip.thickness;
    double change = limits::increment_growth;
    const double bent = solver_.last_curvature_move() * t;
    if (bent > 0.0) change = std::min(change, std::max(0.5, options_.solver.curvature_increment / bent));
    if (pressed > 0.0) change = std::min(change, std::max(0.3, limits::force_increment / pressed));
    return std::min(change * move, options_.solver.largest_increment * t);
}

// Work that may be missing from an increment, N mm per mm.
double Driver::open_increment() const {
    return limits::open_increment *
           std::max(now_.audit.largest,
                    limits::open_increment_work * solver_.force_scale() * scene_.strip.thickness);
}

// One accepted increment downwards, at most to `limit` of travel; cut as often as it takes.
bool Driver::step_down(double limit) {
    const double t = scene_.strip.thickness;
    const SolverState before = now_;
    while (true) {
        const double move = std::min(increment_, limit - now_.travel);
        const StepOutcome outcome = solver_.step(now_, move);
        if (outcome == StepOutcome::solved) {
            const bool jumped = solver_.last_slip() > limits::slip_over_ram * move + limits::slip_free * t;
            const double pressed = std::abs(now_.punch_force - before.punch_force) / solver_.force_scale();
            const double missing = now_.audit.residue() - before.audit.residue();
            const bool open = std::abs(missing) > open_increment();
            if (((pressed > limits::force_jump || jumped) && move > limits::closing_increment * t) ||
                (open && move > limits::jump_increment * t)) {
                now_ = before;  // the tools have closed on the strip within the increment, or it slid away
                increment_ = 0.35 * move;
                continue;
            }
            // Between two states that are as near as they can be there is no equilibrium: the strip jumps.
            if (open && missing > 0.0) now_.audit.set_free += missing;
            const double next = next_increment(move, pressed);
            if (move >= 0.999 * increment_ || next < move) increment_ = next;
            // In a hem the inner face lies on itself, and cannot be sharper than that.
            if (!scene_.touches_itself && largest_curvature(now_) * t > limits::sharpest)
                return fail(Outcome::folded,
                            "the strip is bent to a sharp edge and thins there, as before tearing,");
            if (now_.punch_force > limits::closed_force * solver_.force_scale())
                return fail(Outcome::force_limit, too_strong);
            if (largest_stretch(now_) > limits::crushed)
                return fail(Outcome::crushed, "the strip is crushed to less than a third of its thickness");
            return true;
        }
        increment_ = 0.35 * move;
        if (increment_ >= limits::smallest_increment * t) continue;
        if (outcome == StepOutcome::folded)
            return fail(Outcome::folded, "a section of the strip folds: no strip can be bent that sharply,");
        return fail(Outcome::increments_too_small,
                    squeezed(0.5)
                        ? "the strip is squeezed between punch and die, and no equilibrium is found,"
                        : "no equilibrium is found even in the smallest increment");
    }
}

bool Driver::load_to_travel(double travel) {
    while (now_.travel < travel - 1e-9 * scene_.strip.thickness) {
        if (!step_down(travel)) return false;
        keep(Phase::pressing);
        if (!goes_on()) return false;
    }
    return true;
}

bool Driver::begin() {
    if (!in_equilibrium_)
        return fail(Outcome::increments_too_small,
                    "the strip does not settle on the die before the punch touches it,");
    keep(Phase::placed);
    return true;
}

bool Driver::load_to_stop() {
    const Stop& stop = scene_.stop;
    if (!begin()) return false;
    if (stop.kind == StopKind::force) return load_to_force();
    if (stop.kind == StopKind::free_angle) return load_to_angle();
    if (!load_to_travel(std::min(stop.value, stop.travel_limit))) return false;
    return stop.value <= stop.travel_limit ||
           end_at(Outcome::travel_limit, "the tools close before the stop travel");
}

double Driver::loaded_angle(const SolverState& c) const {
    return sense_ *
           strip::turn_between(c.strip.blank_position, c.strip.theta, scene_.stop.left, scene_.stop.right);
}

// The punch goes back in contact until nothing touches it, or nearly so: what is then left in the sections is
// elastic, and they are released anyway. A strip that touches itself is not, and is followed to the end.
bool Driver::retract(SolverState& c, double force_fall, WayBack& back) {
    const double t = scene_.strip.thickness;
    const double held = c.punch_force, none = 1e-6 * solver_.force_scale();
    const double enough = scene_.touches_itself ? none : std::max(none, limits::force_left * held);
    // A stroke that hardly bends the strip is over before the usual first increment.
    double move = std::min(limits::first_increment * t, force_fall * std::max(c.travel, 1e-6 * t));
    double rate = 0.0;  // of the force, N per mm and mm, in the last step
    for (int i = 0; i < 2000; ++i) {
        if (c.punch_force <= enough && i > 0) {
            if (c.punch_force > none) back.curve.push_back({c.travel - c.punch_force / rate, 0.0});
            return true;
        }
        const double before = c.punch_force;
        if (solver_.step(c, -move) == StepOutcome::solved) {
            back.curve.push_back({c.travel, c.punch_force});
            if (options_.record) record(back.recording, c, Phase::retracting);
            const double fall = std::abs(before - c.punch_force) / std::max(held, enough);
            double change = limits::way_back_growth;
            if (fall > 0.0) change = std::min(change, std::max(0.3, force_fall / fall));
            rate = (before - c.punch_force) / move;
            move = std::min(change * move, 2.0 * options_.solver.largest_increment * t);
            // Not past where the punch leaves the strip, which then has nothing to stand between.
            if (enough > none && rate > 0.0 && c.punch_force > enough)
                move = std::min(move, (c.punch_force - 0.5 * enough) / rate);
        } else {
            move *= 0.35;
            if (move < limits::smallest_increment * t) return false;
        }
    }
    return false;
}

// force_fall: see limits::force_fall.
WayBack Driver::way_back(double force_fall) {
    WayBack back;
    back.retracted = now_;
    back.off = retract(back.retracted, force_fall, back);
    back.free = back.retracted;
    // Touching faces keep pressing; without them, the sections are unloaded one by one.
    back.released = back.off && (scene_.touches_itself || solver_.release(back.free));
    back.angle = loaded_angle(back.free);
    return back;
}

void Driver::go_to(const Mark& mark, const std::vector<State>& states, const std::vector<CurvePoint>& curve) {
    now_ = mark.at;
    increment_ = mark.increment;
    result_.recording.states.assign(states.begin(), states.begin() + now_.recorded);
    result_.curve.assign(curve.begin(), curve.begin() + now_.curve_points);
}

bool Driver::step_towards(double travel) {
    if (!step_down(travel)) return false;
    keep(Phase::pressing);
    return true;
}

StrokeResult Driver::release_from_here() {
    const StrokeResult pressed = result_;
    result_.outcome = Outcome::reached;
    result_.reason.clear();
    loaded_ = true;
    back_.reset();
    StrokeResult result = turn_back();
    result_ = pressed;
    return result;
}

StrokeResult Driver::run() {
    loaded_ = load_to_stop();
    return turn_back();
}

// From the stop, or from where the stroke ended without one.
StrokeResult Driver::turn_back() {
    result_.stop_travel = now_.travel;
    result_.stop_force = now_.punch_force;
    result_.free = now_.strip;
    result_.audit = now_.audit;
    result_.increments = now_.increments;
    result_.iterations = now_.iterations;
    for (const CurvePoint& p : result_.curve) result_.peak_force = std::max(result_.peak_force, p.force);
    if (!loaded_) return std::move(result_);

    double whole = 0.0;
    for (int e = 0; e < scene_.strip.elements(); ++e) whole += scene_.strip.length(e);
    result_.balance_error = unbalanced(now_, scene_.weight * whole) / std::max(result_.peak_force, 1e-300);
    record(result_.recording, now_, Phase::held);

    if (!back_) back_ = way_back(limits::force_fall);
    std::vector<State>& states = result_.recording.states;
    std::move(back_->recording.states.begin(), back_->recording.states.end(), std::back_inserter(states));
    result_.curve.insert(result_.curve.end(), back_->curve.begin(), back_->curve.end());
    const SolverState& end = back_->free;
    result_.increments = end.increments;
    result_.iterations = end.iterations;
    result_.audit = back_->retracted.audit;
    if (!back_->off) fail(Outcome::not_free, "no equilibrium is found as the punch retracts");
    if (back_->off && !back_->released)
        fail(Outcome::not_free, "a section of the strip has no state without load");
    record(result_.recording, end, Phase::free);
    result_.free = end.strip;
    return std::move(result_);
}

}  // namespace overbend::stroke
