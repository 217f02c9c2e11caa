// Drives one stroke on the piece of the strip that the tools press: a list of named steps on one solver.

#pragma once

#include <optional>
#include <vector>

#include "sim/stroke/forecast.h"
#include "sim/stroke/increment.h"
#include "sim/stroke/solver_state.h"
#include "sim/stroke/stroke.h"

namespace overbend::stroke {

// From a loaded state back: punch off, strip released.
struct WayBack {
    bool off = false;       // nothing touches the strip any more
    bool released = false;  // and its sections have found their states without load
    SolverState retracted;  // when the punch was off
    SolverState free;       // and after release
    double angle = 0.0;     // free, between the stop's flats, rad
    Recording recording;    // states on the way
    std::vector<CurvePoint> curve;
    bool complete() const { return off && released; }
};

constexpr const char* too_strong = "the force exceeds what tools can take before the stop is reached,";

class Driver {
  public:
    // scene and options must outlive the driver. scene.strip: all of it may be pressed.
    Driver(const StrokeScene& scene, const StrokeOptions& options);

    // recording: of the scene's strip.
    StrokeResult run();

    // ---- by hand, for a stroke that goes on from where it is; see live_stroke.h
    // A state that was reached by whole increments, and the size of the next one.
    struct Mark {
        SolverState at;
        double increment = 0.0;
    };
    // What was recorded up to now.
    const std::vector<State>& states() const { return result_.recording.states; }
    const std::vector<CurvePoint>& curve() const { return result_.curve; }
    bool begin();  // false: no equilibrium of the strip
    Mark mark() const { return {now_, increment_}; }
    // Earlier or later; states and curve are those recorded up to the mark at least.
    void go_to(const Mark& mark, const std::vector<State>& states, const std::vector<CurvePoint>& curve);
    bool step_towards(double travel);  // one increment, cut short at the travel; false: none is found
    double travel() const { return now_.travel; }
    const std::string& reason() const { return result_.reason; }  // why there was none
    StrokeResult release_from_here();  // as if the stop were here; the strip stays pressed

  private:
    // driver.cpp
    double next_increment(double move, double pressed) const;
    bool step_down(double limit);
    bool load_to_travel(double travel);
    bool load_to_stop();
    StrokeResult turn_back();
    WayBack way_back(double force_fall);
    bool retract(SolverState& c, double force_fall, WayBack& back);
    double loaded_angle(const SolverState& c) const;
    void keep(Phase phase);
    void go_back(const SolverState& c);
    bool fail(Outcome outcome, const char* what);
    bool end_at(Outcome outcome, const char* what);
    bool squeezed(double force) const;
    double open_increment() const;
    bool goes_on();

    // closing_in.cpp
    bool press_to(const SolverState& from, double travel);
    bool load_to_force();
    bool close_in_on_force(const SolverState& before);
    bool load_to_angle();
    bool land(const std::vector<Mark>& marks, const StrokeResult& pressed, Forecast& forecast);
    bool land_if_near(std::vector<Mark>& marks, Forecast& forecast, bool& foretell);
    bool close_in_if_passed(const SolverState& early, double estimate);
    bool press_to_estimate(const SolverState& early, double high, double above);
    bool close_in_on_angle(const SolverState& early, double excess);
    double estimated_angle();

    const StrokeScene& scene_;
    const StrokeOptions& options_;
    IncrementSolver solver_;
    SolverState now_;
    StrokeResult result_;
    std::optional<WayBack> back_;  // from now_, where it is known already
    double sense_ = 1.0;           // -1: the stop's free angle turns downwards; angles here turn its way
    double wanted_ = 0.0;          // the stop's free angle, turned its way, > 0
    double offset_ = 0.0;          // of the free angle from its estimate by sections
    double increment_ = 0.0;
    bool in_equilibrium_ = false;
    bool loaded_ = false;  // to the stop
    bool missed_ = false;  // the stop's angle, which was closed in on
};

}  // namespace overbend::stroke
