#include "sim/stroke/stroke.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "sim/strip/place.h"
#include "sim/stroke/recorder.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

namespace {

// The stroke's driver: a list of named steps on one solver.
class Driver {
  public:
    Driver(const StrokeScene& scene, const StrokeOptions& options)
        : scene_(scene),
          options_(options),
          solver_(scene.law, scene.tools, scene.friction, scene.zone, scene.strip, options.solver) {
        now_.strip = scene.strip;
        solver_.start(now_);
        result_.recording = begin_recording(scene.strip, scene.tools);
        increment_ = limits::first_increment * scene.strip.thickness;
    }

    StrokeResult run();

  private:
    bool load_to_stop();
    bool load_to_travel(double travel);
    bool step_down(double limit);
    bool close_in_on_force(const Condition& before);
    bool close_in_on_angle(const Condition& before);
    bool retract(Condition& c, bool keep);
    double loaded_angle(const Condition& c) const;
    double free_angle(Condition c);
    void keep(const Condition& c, Phase phase);
    void go_back(const Condition& c);
    bool fail(Outcome outcome, const char* what);

    const StrokeScene& scene_;
    const StrokeOptions& options_;
    IncrementSolver solver_;
    Condition now_;
    StrokeResult result_;
    double increment_ = 0.0;
};

bool Driver::fail(Outcome outcome, const char* what) {
    result_.outcome = outcome;
    char text[200];
    std::snprintf(text, sizeof text, "%s at %.3f mm of travel, with %.1f N/mm on the punch", what,
                  now_.travel, now_.punch_force);
    result_.reason = text;
    return false;
}

void Driver::keep(const Condition& c, Phase phase) {
    result_.curve.push_back({c.travel, c.punch_force});
    now_.curve_points = static_cast<int>(result_.curve.size());
    if (!options_.record) return;
    const double spacing = options_.record_every * scene_.strip.thickness;
    const std::vector<State>& states = result_.recording.states;
    const bool turn =
        states.empty() || states.back().phase != phase || phase == Phase::held || phase == Phase::free;
    if (turn || std::abs(states.back().travel - c.travel) >= spacing) record(result_.recording, c, phase);
    now_.recorded = static_cast<int>(states.size());
}

// Takes up an earlier condition again and forgets what was kept since.
void Driver::go_back(const Condition& c) {
    now_ = c;
    result_.recording.states.resize(c.recorded);
    result_.curve.resize(c.curve_points);
}

// One accepted increment downwards, at most to `limit` of travel; cut as often as it takes.
bool Driver::step_down(double limit) {
    const double t = scene_.strip.thickness;
    while (true) {
        const double move = std::min(increment_, limit - now_.travel);
        const double force_before = now_.punch_force;
        const StepOutcome outcome = solver_.step(now_, move);
        if (outcome == StepOutcome::solved) {
            const int n = solver_.last_iterations();
            double change = n <= 5 ? 1.5 : n <= 10 ? 1.1 : 0.7;
            const double bent = solver_.last_curvature_move() * t;
            if (bent > 0.0)
                change = std::min(change, std::max(0.5, options_.solver.curvature_increment / bent));
            const double pressed = std::abs(now_.punch_force - force_before) / solver_.force_scale();
            if (pressed > 0.0) change = std::min(change, std::max(0.3, limits::force_increment / pressed));
            if (move >= 0.999 * increment_ || change < 1.0)
                increment_ = std::min(change * move, options_.solver.largest_increment * t);
            return true;
        }
        increment_ = 0.35 * move;
        if (increment_ < limits::smallest_increment * t)
            return outcome == StepOutcome::folded
                       ? fail(Outcome::folded,
                              "a section of the strip folds: the bend is sharper than the strip can be")
                       : fail(Outcome::increments_too_small,
                              "no equilibrium is found even in the smallest increment");
    }
}

bool Driver::load_to_travel(double travel) {
    while (now_.travel < travel - 1e-9 * scene_.strip.thickness) {
        if (!step_down(travel)) return false;
        keep(now_, Phase::pressing);
        if (options_.progress && !options_.progress(now_.travel, now_.punch_force))
            return fail(Outcome::cancelled, "stopped on request");
    }
    return true;
}

double Driver::loaded_angle(const Condition& c) const {
    return strip::turn_between(c.strip.blank_position, c.strip.theta, scene_.stop.left, scene_.stop.right);
}

// The angle after going back and letting go from here, as a trial.
double Driver::free_angle(Condition c) {
    if (!retract(c, false) || !solver_.let_go(c)) return std::nan("");
    return loaded_angle(c);
}

// From the state before the force was passed: secants on the travel.
bool Driver::close_in_on_force(const Condition& before) {
    const Stop& stop = scene_.stop;
    double low = before.travel, low_force = before.punch_force;
    double high = now_.travel, high_force = now_.punch_force;
    for (int i = 0; i < 25; ++i) {
        if (std::abs(now_.punch_force - stop.value) <= 1e-4 * stop.value) return true;
        double goal = low + (high - low) * (stop.value - low_force) / (high_force - low_force);
        goal = std::clamp(goal, low + 0.02 * (high - low), high - 0.02 * (high - low));
        go_back(before);
        increment_ = goal - before.travel;
        while (now_.travel < goal - 1e-9 * scene_.strip.thickness)
            if (!step_down(goal)) return false;
        if (now_.punch_force < stop.value)
            low = now_.travel, low_force = now_.punch_force;
        else
            high = now_.travel, high_force = now_.punch_force;
    }
    if (std::abs(now_.punch_force - stop.value) <= 1e-3 * stop.value) return true;
    return fail(Outcome::stop_missed, "the force jumps over the stop's");
}

// From a state whose free angle is short of the stop's: secants on the travel, each with a true way back.
bool Driver::close_in_on_angle(const Condition& before) {
    const Stop& stop = scene_.stop;
    double low = before.travel, low_angle = free_angle(before);
    double high = now_.travel, high_angle = free_angle(now_);
    double angle = high_angle;
    for (int i = 0; i < 25; ++i) {
        if (std::isnan(low_angle) || std::isnan(angle))
            return fail(Outcome::not_free, "the punch does not come off the strip");
        if (std::abs(angle - stop.value) <= stop.tolerance) return true;
        const double rise = high_angle - low_angle;
        double goal = rise > 0.0 ? low + (high - low) * (stop.value - low_angle) / rise : 0.5 * (low + high);
        goal = std::clamp(goal, low + 0.02 * (high - low), high - 0.02 * (high - low));
        if (high - low < 1e-9 * scene_.strip.thickness) break;
        go_back(before);
        increment_ = goal - before.travel;
        while (now_.travel < goal - 1e-9 * scene_.strip.thickness)
            if (!step_down(goal)) return false;
        angle = free_angle(now_);
        if (angle < stop.value)
            low = now_.travel, low_angle = angle;
        else
            high = now_.travel, high_angle = angle;
    }
    if (std::abs(angle - stop.value) <= 10.0 * stop.tolerance) return true;
    return fail(Outcome::stop_missed, "the free angle jumps over the stop's");
}

bool Driver::load_to_stop() {
    const Stop& stop = scene_.stop;
    keep(now_, Phase::placed);
    if (stop.kind == StopKind::travel) {
        if (!load_to_travel(std::min(stop.value, stop.travel_limit))) return false;
        if (stop.value > stop.travel_limit) {
            result_.outcome = Outcome::travel_limit;
            result_.reason = "the tools close before the stop's travel";
        }
        return true;
    }
    // The estimate of the springback by sections costs as much as an increment; true ways back only near the
    // stop.
    Condition before = now_;
    while (true) {
        if (now_.travel >= stop.travel_limit - 1e-9 * scene_.strip.thickness) {
            result_.outcome = Outcome::travel_limit;
            result_.reason = "the tools close before the stop is reached";
            return true;
        }
        before = now_;
        if (!step_down(stop.travel_limit)) return false;
        if (stop.kind == StopKind::force && now_.punch_force >= stop.value) {
            if (!close_in_on_force(before)) return false;
            keep(now_, Phase::pressing);
            return true;
        }
        if (stop.kind == StopKind::free_angle && loaded_angle(now_) >= stop.value) {
            const double estimate = solver_.free_turn(now_, stop.left, stop.right);
            if (estimate >= stop.value - 0.01 && free_angle(now_) >= stop.value) {
                if (!close_in_on_angle(before)) return false;
                keep(now_, Phase::pressing);
                return true;
            }
        }
        keep(now_, Phase::pressing);
        if (now_.punch_force > limits::force * solver_.force_scale())
            return fail(Outcome::force_limit,
                        "the stop is not reached before the force is a hundred times an air bend's");
        if (options_.progress && !options_.progress(now_.travel, now_.punch_force))
            return fail(Outcome::cancelled, "stopped on request");
    }
}

// The punch goes back in contact until nothing touches it.
bool Driver::retract(Condition& c, bool keep_states) {
    const double t = scene_.strip.thickness;
    const double enough = 1e-6 * solver_.force_scale();
    double move = limits::first_increment * t;
    for (int i = 0; i < 2000; ++i) {
        if (c.punch_force <= enough && i > 0) return true;
        if (solver_.step(c, -move) == StepOutcome::solved) {
            if (keep_states) {
                result_.curve.push_back({c.travel, c.punch_force});
                if (options_.record) record(result_.recording, c, Phase::retracting);
            }
            if (solver_.last_iterations() <= 8)
                move = std::min(1.6 * move, 2.0 * options_.solver.largest_increment * t);
        } else {
            move *= 0.35;
            if (move < limits::smallest_increment * t) return false;
        }
    }
    return false;
}

// What is left of the balance of all contact forces on the strip, in the direction of the ram.
double unbalanced(const Condition& c) {
    double sum = 0.0;
    for (const ContactForce& f : c.contacts) sum += f.force.y();
    return std::abs(sum);
}

StrokeResult Driver::run() {
    if (!load_to_stop()) {
        result_.loaded = now_;
        result_.free = now_.strip;
        result_.audit = now_.audit;
        result_.stop_travel = now_.travel;
        return std::move(result_);
    }
    result_.loaded = now_;
    result_.stop_travel = now_.travel;
    for (const CurvePoint& p : result_.curve) result_.peak_force = std::max(result_.peak_force, p.force);
    result_.balance_error = unbalanced(now_) / std::max(result_.peak_force, 1e-300);
    if (options_.record) result_.recording.states.resize(now_.recorded);
    record(result_.recording, now_, Phase::held);

    if (!retract(now_, true)) {
        fail(Outcome::not_free, "the punch does not come off the strip");
    } else {
        result_.audit = now_.audit;
        if (!solver_.let_go(now_))
            fail(Outcome::not_free, "a section of the strip finds no state without load");
    }
    record(result_.recording, now_, Phase::free);
    result_.free = now_.strip;
    result_.increments = now_.increments;
    result_.iterations = now_.iterations;
    return std::move(result_);
}

}  // namespace

const char* outcome_words(Outcome outcome) {
    switch (outcome) {
        case Outcome::reached:
            return "reached";
        case Outcome::travel_limit:
            return "travel limit";
        case Outcome::force_limit:
            return "force limit";
        case Outcome::increments_too_small:
            return "no equilibrium";
        case Outcome::folded:
            return "folded";
        case Outcome::not_free:
            return "not free";
        case Outcome::stop_missed:
            return "stop missed";
        case Outcome::unbalanced:
            return "unbalanced";
        case Outcome::cancelled:
            return "cancelled";
    }
    return "";
}

StrokeResult press(const StrokeScene& scene, const StrokeOptions& options) {
    return Driver(scene, options).run();
}

}  // namespace overbend::stroke
