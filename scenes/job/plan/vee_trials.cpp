#include "scenes/job/plan/vee_trials.h"

#include <algorithm>
#include <cmath>

#include "scenes/job/run/measures.h"
#include "scenes/job/run/strip_bends.h"
#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

constexpr double least_nose = 0.2;  // of the thickness; sharper ones cut
constexpr double angle_to_spare = 2.5 * degree;

VeeTrial pressed(const files::Case& c, double angle, double nose, double opening, double shoulder) {
    VeeBend bend;
    bend.material = c.material;
    bend.thickness = c.thickness;
    bend.friction = c.run.friction;
    bend.width = c.width;
    bend.layers = std::min(c.run.layers, 9);
    bend.elements_per_thickness = std::min(c.run.elements_per_thickness, 6.0);
    bend.die_opening = opening, bend.shoulder_radius = shoulder, bend.nose_radius = nose;
    stroke::Stop stop;
    stop.kind = stroke::StopKind::free_angle;
    stop.value = angle;
    stroke::StrokeOptions options;
    options.record = false;
    VeeTrial trial;
    try {
        const VeeResult r = bend_vee(bend, stop, options);
        trial.reached = r.stroke.outcome == stroke::Outcome::reached;
        trial.radius = r.inside_radius_free;
        trial.loaded = r.loaded;
        trial.force = r.stroke.peak_force;
    } catch (const OutOfRange&) {  // tools that cannot be
    }
    return trial;
}

}  // namespace

const VeeTrial& VeeTrials::trial(double angle, double nose, double opening, double shoulder) {
    const auto thousandths = [](double value) { return std::lround(1000.0 * value); };
    const auto key = std::make_tuple(thousandths(angle / degree), thousandths(nose), thousandths(opening),
                                     thousandths(shoulder));
    const auto found = known_.find(key);
    if (found != known_.end()) return found->second;
    return known_.emplace(key, pressed(c_, angle, nose, opening, shoulder)).first->second;
}

std::optional<NoseFor> VeeTrials::nose_for(int bend, double opening, double shoulder) {
    const files::Bend& drawn = c_.part.bends[bend];
    const double angle = std::abs(drawn.angle), wanted = drawn.inside_radius, t = c_.thickness;
    const double near_enough = 0.6 * aimed_at * allowed_radius(c_, bend);
    const double low = least_nose * t;
    // Between the shoulders there must be room for nose and strip.
    const auto high_at = [&](double loaded) {
        const double lean = std::min(0.5 * (loaded + angle_to_spare), 1.55);
        return std::min(0.5 * opening / std::sin(lean) - t - shoulder, 0.5 * opening - t);
    };
    double high = high_at(angle);
    if (high < low) return {};

    std::optional<NoseFor> best;
    double nose = std::clamp(0.8 * wanted, low, high), last_nose = 0.0, last_radius = 0.0, slope = 1.0;
    constexpr int most_trials = 5;
    for (int i = 0; i < most_trials; ++i) {
        const VeeTrial& made = trial(angle, nose, opening, shoulder);
        if (!made.reached) {
            if (nose <= low + 1e-9) break;
            nose = high = std::max(low, 0.8 * nose);
            continue;
        }
        high = std::min(high, high_at(made.loaded));
        if (best && std::abs(nose - last_nose) > 1e-3)
            slope = std::clamp((made.radius - last_radius) / (nose - last_nose), 0.2, 1.5);
        const double off = made.radius - wanted;
        if (!best || std::abs(off) < std::abs(best->radius - wanted))
            best = NoseFor{nose, made.radius, slope, made.loaded, false};
        last_nose = nose, last_radius = made.radius;
        const double next = std::clamp(nose - off / slope, low, std::max(low, high));
        if (std::abs(off) < near_enough || std::abs(next - nose) < 0.01 * t) break;
        nose = next;
    }
    if (best) {
        best->slope = slope;
        best->within = drawn.radius_tolerance.reference ||
                       std::abs(best->radius - wanted) <= aimed_at * allowed_radius(c_, bend);
    }
    return best;
}

}  // namespace overbend::job
