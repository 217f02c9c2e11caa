// A stroke from placing to free: the punch comes down to its stop, goes back until nothing touches it, and
// the strip is released. No formula gives the springback: it is a result of the mechanics.
//
// Units  mm, rad, MPa, N per mm of strip width. Press coordinates (see sim/tool/tool_set.h).

#pragma once

#include <functional>
#include <string>
#include <vector>

#include "sim/stroke/audit.h"
#include "sim/stroke/recording.h"
#include "sim/stroke/solver_options.h"
#include "sim/stroke/stroke_scene.h"

namespace overbend::stroke {

// How a stroke ended. With the first four, the strip has been released and the result is complete.
enum class Outcome {
    reached,
    travel_limit,  // the tools close before the stop is reached
    jammed,        // the strip fills the room between punch and die before the stop's angle is reached
    pressed_open,  // a hem whose leg does not fold over: the flat tools press it open again
    force_limit,
    increments_too_small,
    folded,
    crushed,  // the strip is pressed thinner than any metal bears
    not_free,
    stop_missed,
    unbalanced,
    cancelled
};
const char* outcome_words(Outcome outcome);

struct StrokeOptions {
    SolverOptions solver;
    double record_every = 0.0;  // thicknesses of travel between recorded states; 0: each increment
    bool record = true;         // false: only the last two states (loaded and free) are kept
    std::function<bool(double travel, double punch_force)> progress;  // false stops the stroke
};

struct CurvePoint {
    double travel = 0.0;  // mm
    double force = 0.0;   // N per mm
};

struct StrokeResult {
    Outcome outcome = Outcome::reached;
    std::string reason;      // in words, when it was not reached: why and where
    strip::StripState free;  // in press coordinates, where the strip was released
    Recording recording;
    std::vector<CurvePoint> curve;  // force over travel, loading and going back
    double stop_travel = 0.0;
    double stop_force = 0.0;  // on the punch at the stop
    double peak_force = 0.0;
    double balance_error =
        0.0;      // |punch force - vertical force on the strip's other tools| over the peak, at the stop
    Audit audit;  // until the punch is off
    int increments = 0;
    int iterations = 0;
    bool solved() const {
        return outcome == Outcome::reached || outcome == Outcome::travel_limit ||
               outcome == Outcome::jammed || outcome == Outcome::pressed_open;
    }
};

StrokeResult press(const StrokeScene& scene, const StrokeOptions& options);

}  // namespace overbend::stroke
