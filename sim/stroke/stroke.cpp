#include "sim/stroke/stroke.h"

#include <algorithm>
#include <cstdio>
#include <utility>

#include "sim/stroke/driver.h"
#include "sim/stroke/pressed_part.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

namespace {

// Whether another result should be looked for with finer increments: the balance is open, or none was found.
bool doubtful(const StrokeResult& r) {
    if (r.solved()) return r.audit.residue_percent() > limits::open_balance;
    return r.outcome == Outcome::increments_too_small || r.outcome == Outcome::not_free ||
           r.outcome == Outcome::stop_missed;
}

bool better(const StrokeResult& a, const StrokeResult& b) {
    if (a.solved() != b.solved()) return a.solved();
    return a.audit.residue_percent() < b.audit.residue_percent();
}

// Presses, and up to three times more with finer increments where that leaves a doubt. Keeps the best.
StrokeResult press_with_care(const StrokeScene& scene, const StrokeOptions& options) {
    StrokeResult best = Driver(scene, options).run();
    for (const double finer : {2.0, 3.0, 6.0}) {
        if (!doubtful(best)) break;
        StrokeOptions careful = options;
        careful.solver.largest_increment /= finer;
        careful.solver.curvature_increment /= finer;
        StrokeResult next = Driver(scene, careful).run();
        if (next.outcome == Outcome::cancelled) return next;
        if (better(next, best)) best = std::move(next);
    }
    if (best.solved() && best.audit.residue_percent() > limits::lost_balance) {
        char text[100];
        std::snprintf(text, sizeof text, "the energy balance is off by %.1f per cent",
                      best.audit.residue_percent());
        best.outcome = Outcome::unbalanced;
        best.reason = text;
    }
    return best;
}

}  // namespace

const char* outcome_words(Outcome outcome) {
    switch (outcome) {
        case Outcome::reached:
            return "reached";
        case Outcome::travel_limit:
            return "travel limit";
        case Outcome::jammed:
            return "jammed";
        case Outcome::force_limit:
            return "force limit";
        case Outcome::increments_too_small:
            return "no equilibrium";
        case Outcome::folded:
            return "folded";
        case Outcome::crushed:
            return "crushed";
        case Outcome::pressed_open:
            return "pressed open";
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

StrokeResult press(const StrokeScene& whole, const StrokeOptions& options) {
    const Pressed pressed = pressed_part(whole);
    return on_whole_strip(press_with_care(pressed.scene, options), whole, pressed.piece, options.solver);
}

}  // namespace overbend::stroke
