#include "scenes/process/press_scene.h"

#include <algorithm>
#include <cmath>

#include "sim/errors.h"
#include "sim/strip/place.h"
#include "sim/tolerances.h"

namespace overbend::scenes {

namespace {

constexpr double standard_gravity = 9.80665;  // m/s2, by definition

// Free bend angles over the travel of whole strokes, downwards positive.
class Trials {
  public:
    Trials(const stroke::StrokeScene& scene, const stroke::StrokeOptions& options)
        : scene_(scene), options_(options) {
        scene_.stop.kind = stroke::StopKind::travel;
        options_.record = false;
    }
    // How far the free angle at this travel is past the stop's; whether the stroke was solved.
    bool press(double travel) {
        scene_.stop.value = travel;
        last_ = stroke::press(scene_, options_);
        if (!last_.solved()) return false;
        const stroke::State& free = last_.recording.states.back();
        angle_ = -strip::turn_between(last_.recording.blank_position, free.theta, scene_.stop.left,
                                      scene_.stop.right);
        return true;
    }
    double angle() const { return angle_; }
    const stroke::StrokeResult& last() const { return last_; }

  private:
    stroke::StrokeScene scene_;
    stroke::StrokeOptions options_;
    stroke::StrokeResult last_;
    double angle_ = 0.0;
};

}  // namespace

double weight_of(const material::Card& card, double thickness) {
    if (card.density > 0.0) return card.density * 1e-9 * standard_gravity * thickness;  // kg/mm3
    throw OutOfRange("density", "the card of " + card.name + " has none, so that its weight is not known",
                     "give density_kg_m3 in the card, or leave gravity out");
}

stroke::StrokeResult press_scene(const stroke::StrokeScene& scene, const stroke::StrokeOptions& options) {
    const bool downwards = scene.stop.kind == stroke::StopKind::free_angle && scene.stop.value < 0.0;
    if (!downwards) return stroke::press(scene, options);
    const double wanted = -scene.stop.value, t = scene.strip.thickness;
    Trials trials(scene, options);

    // The first travel past the angle, by steps that a flange does not run away in.
    double low = 0.0, below = -wanted, high = 0.0, above = -1.0;
    for (double step = t; above < 0.0; step *= 1.3) {
        low = high, below = high > 0.0 ? above : -wanted;
        if (low >= scene.stop.travel_limit) {
            stroke::StrokeResult short_of_it = trials.last();
            short_of_it.outcome = stroke::Outcome::travel_limit;
            short_of_it.reason = "the tools have gone as far as they can before the stop's angle is reached";
            return short_of_it;
        }
        high = std::min(high + step, scene.stop.travel_limit);
        if (!trials.press(high)) return trials.last();
        above = trials.angle() - wanted;
    }
    // Regula falsi with the side that stays halved.
    double at = high, miss = above;
    for (int i = 0; i < 40 && std::abs(miss) > scene.stop.tolerance && high - low > 1e-8 * t; ++i) {
        const double guess = low - (high - low) * below / (above - below);
        at = std::clamp(guess, low + 0.02 * (high - low), high - 0.02 * (high - low));
        if (!trials.press(at)) return trials.last();
        const double before = miss;
        miss = trials.angle() - wanted;
        if (miss < 0.0) {
            low = at, below = miss;
            if (before < 0.0) above *= 0.5;
        } else {
            high = at, above = miss;
            if (before > 0.0) below *= 0.5;
        }
    }
    stroke::StrokeScene last = scene;
    last.stop.kind = stroke::StopKind::travel;
    last.stop.value = at;
    stroke::StrokeResult result = stroke::press(last, options);
    if (result.solved() && std::abs(miss) > limits::angle_jump) {
        result.outcome = stroke::Outcome::stop_missed;
        result.reason = "the free angle jumps over the stop's";
    }
    return result;
}

}  // namespace overbend::scenes
