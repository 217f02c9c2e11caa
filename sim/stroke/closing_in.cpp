// Finding the travel at which a stop's force or free angle is met: the part of Driver that looks for it.

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <utility>

#include "sim/stroke/driver.h"
#include "sim/tolerances.h"
#include "sim/units.h"

namespace overbend::stroke {

namespace {

// A root between two places, by secants that never leave the bracket; a side that stays put for long is made
// lighter (the Illinois rule).
class Bracket {
  public:
    Bracket(double low, double below, double high, double above)
        : low_(low), high_(high), below_(below), above_(above) {}
    double guess() const {
        const double width = high_ - low_;
        const double at = low_ - width * below_ / (above_ - below_);
        return std::clamp(at, low_ + 0.01 * width, high_ - 0.01 * width);
    }
    void take(double at, double value) {
        if (value < 0.0) {
            if (last_ < 0) above_ *= 0.5;
            low_ = at, below_ = value, last_ = -1;
        } else {
            if (last_ > 0) below_ *= 0.5;
            high_ = at, above_ = value, last_ = 1;
        }
    }
    double width() const { return high_ - low_; }

  private:
    double low_, high_, below_, above_;
    int last_ = 0;
};

}  // namespace

// Presses from an earlier condition to a travel past it.
bool Driver::press_to(const SolverState& from, double travel) {
    go_back(from);
    // From the first touch the force rises from zero, and one increment would not see how.
    increment_ = (travel - from.travel) / (from.increments < 3 ? 8.0 : 1.0);
    while (now_.travel < travel - 1e-9 * scene_.strip.thickness)
        if (!step_down(travel)) return false;
    return true;
}

bool Driver::load_to_force() {
    const Stop& stop = scene_.stop;
    while (now_.travel < stop.travel_limit - 1e-9 * scene_.strip.thickness) {
        const SolverState before = now_;
        if (!step_down(stop.travel_limit)) return false;
        if (now_.punch_force >= stop.value) {
            if (!close_in_on_force(before)) return false;
            keep(Phase::pressing);
            return true;
        }
        keep(Phase::pressing);
        if (!goes_on()) return false;
    }
    return end_at(Outcome::travel_limit, "the tools close before the stop force is reached");
}

// From the state before the force was passed.
bool Driver::close_in_on_force(const SolverState& before) {
    const double wanted = scene_.stop.value;
    Bracket bracket(before.travel, before.punch_force - wanted, now_.travel, now_.punch_force - wanted);
    for (int i = 0; i < 25 && std::abs(now_.punch_force - wanted) > 1e-4 * wanted; ++i) {
        const double goal = bracket.guess();
        if (!press_to(before, goal)) return false;
        bracket.take(goal, now_.punch_force - wanted);
    }
    if (std::abs(now_.punch_force - wanted) <= 1e-3 * wanted) return true;
    return fail(Outcome::stop_missed, "the force jumps past the stop force");
}

// What the free angle would be from here: section by section, and set right by the last true way back.
double Driver::estimated_angle() {
    return sense_ * solver_.free_turn(now_, scene_.stop.left, scene_.stop.right) + offset_;
}

// From one of the conditions on the way, to the travel that the forecast gives; corrected until the free
// angle is the stop's. A first way back, in larger steps, sets the estimate right. An increment that is
// nearly nothing leaves the strip otherwise than none, since friction begins again in each: none is shorter
// than the first. pressed: as far as the last of them. False: it leads nowhere.
bool Driver::land(const std::vector<Mark>& marks, const StrokeResult& pressed, Forecast& forecast) {
    const double tolerance = scene_.stop.tolerance, t = scene_.strip.thickness;
    bool set_right = false;
    for (int round = 0; round < 10; ++round) {
        const double goal = forecast.travel_for(wanted_ - offset_);
        const auto from = std::find_if(marks.rbegin(), marks.rend(), [&](const Mark& m) {
            return goal - m.at.travel >= limits::first_increment * t;
        });
        if (from == marks.rend() || goal - from->at.travel > 2.0 * from->increment ||
            goal > scene_.stop.travel_limit)
            return false;
        // A later round may begin further on than an earlier one did.
        go_to(*from, pressed.recording.states, pressed.curve);
        increment_ = goal - now_.travel;
        while (now_.travel < goal - 1e-9 * t)
            if (!step_down(goal)) return false;
        const double estimate = estimated_angle();
        forecast.add(now_.travel, estimate - offset_);
        if (std::abs(estimate - wanted_) > 0.5 * tolerance) continue;
        if (!set_right) {
            const WayBack first = way_back(limits::trial_force_fall);
            if (!first.complete()) return false;
            offset_ += first.angle - estimate;
            set_right = true;
            if (std::abs(first.angle - wanted_) > 0.5 * tolerance) continue;
        }
        back_ = way_back(limits::force_fall);
        if (!back_->complete() || std::abs(back_->angle - wanted_) <= tolerance) return true;
        offset_ = back_->angle - (estimate - offset_);
        back_.reset();
    }
    return false;
}

// After an increment: lands on the stop where the forecast has it within the next one, or behind. Where that
// leads nowhere, all is as before; `foretell` says whether the stop is still ahead.
bool Driver::land_if_near(std::vector<Mark>& marks, Forecast& forecast, bool& foretell) {
    // What springs back is less than what is bent: far from the stop the sections are not looked at.
    const double bent = loaded_angle(now_), before = loaded_angle(marks.back().at);
    marks.push_back(mark());
    if (marks.size() > 4) marks.erase(marks.begin());
    if (bent + 3.0 * std::abs(bent - before) < wanted_) return false;
    const double estimate = estimated_angle();
    forecast.add(now_.travel, estimate - offset_);
    const bool passed = estimate >= wanted_;
    if (!passed && forecast.travel_for(wanted_ - offset_) > now_.travel + increment_) return false;
    const StrokeResult pressed = result_;
    const double offset = offset_;
    if (land(marks, pressed, forecast)) return true;
    result_ = pressed, offset_ = offset;
    now_ = marks.back().at, increment_ = marks.back().increment;
    foretell = !passed;
    return false;
}

// Once the angle is passed: closes in on it from both sides. early: a condition short of it. False: it is not
// passed.
bool Driver::close_in_if_passed(const SolverState& early, double estimate) {
    if (estimate < wanted_) return false;
    back_ = way_back(limits::force_fall);
    if (!back_->complete()) return true;  // run() says so
    offset_ += back_->angle - estimate;
    const double excess = back_->angle - wanted_;
    if (std::abs(excess) <= scene_.stop.tolerance) return true;
    if (excess > 0.0) {
        missed_ = !close_in_on_angle(early, excess);
        return true;
    }
    back_.reset();
    return false;
}

// The strip's sections are unloaded as an estimate; a forecast of it says where to end an increment and try a
// true way back. Where that leads nowhere, because the strip springs back in one way or another from states
// that are nearly the same, the stroke goes on past the angle, and it is closed in on from both sides.
bool Driver::load_to_angle() {
    const Stop& stop = scene_.stop;
    constexpr double near = 0.03;  // rad
    SolverState early = now_;
    bool foretell = true;
    Forecast forecast;
    std::vector<Mark> marks{mark()};
    forecast.add(now_.travel, loaded_angle(now_));
    while (now_.travel < stop.travel_limit - 1e-9 * scene_.strip.thickness) {
        if (!step_down(stop.travel_limit))
            return squeezed(1.0) && end_at(Outcome::jammed,
                                           "the strip is squeezed between punch and die, which bend it no "
                                           "further,");
        if (foretell) {
            keep(Phase::pressing);
            if (land_if_near(marks, forecast, foretell)) {
                keep(Phase::pressing);
                return true;
            }
        }
        const bool far = loaded_angle(now_) < wanted_ - near;
        if (!foretell && !far && close_in_if_passed(early, estimated_angle())) {
            if (!missed_) keep(Phase::pressing);
            return !missed_;
        }
        keep(Phase::pressing);
        if (far) early = now_;
        if (squeezed(limits::squeeze))
            return end_at(Outcome::jammed,
                          "the strip is squeezed between punch and die, which bend it no further,");
        if (now_.punch_force > limits::force * solver_.force_scale())
            return fail(Outcome::force_limit, too_strong);
        if (!goes_on()) return false;
    }
    return end_at(Outcome::travel_limit, "the tools close before the stop angle is reached");
}

// Presses from `early` to where the estimate meets the stop's angle; above: by how much it is past it at
// `high`. False: no equilibrium on the way.
bool Driver::press_to_estimate(const SolverState& early, double high, double above) {
    go_back(early);
    Bracket bracket(early.travel, std::min(estimated_angle() - wanted_, -scene_.stop.tolerance), high,
                    std::max(above, scene_.stop.tolerance));
    double miss = 1e300;
    for (int i = 0; i < 30 && std::abs(miss) > 0.2 * scene_.stop.tolerance; ++i) {
        if (bracket.width() < 1e-10 * scene_.strip.thickness) break;
        const double goal = bracket.guess();
        if (!press_to(early, goal)) return false;
        miss = estimated_angle() - wanted_;
        bracket.take(goal, miss);
    }
    return true;
}

// From a condition short of the angle to now_, whose free angle is `excess` past the stop's. The estimate is
// set right by a true way back until it needs no more setting; where it leads nowhere, because the strip
// springs back in one way or another from states that are nearly the same, true ways back alone are used.
bool Driver::close_in_on_angle(const SolverState& early, double excess) {
    const double tolerance = scene_.stop.tolerance;
    double high = now_.travel, above = excess;
    double nearest = now_.travel, least = excess;
    std::optional<Bracket> truth;
    double low = 0.0, below = 0.0;
    for (int round = 0; round < 16; ++round) {
        if (round > 2 && below < 0.0 && !truth) truth.emplace(low, below, high, above);
        if (truth ? !press_to(early, truth->guess()) : !press_to_estimate(early, high, above)) return false;
        const double estimate = estimated_angle();
        back_ = way_back(limits::force_fall);
        if (!back_->complete()) return true;
        const double miss = back_->angle - wanted_;
        if (std::abs(miss) <= tolerance) return true;
        if (std::abs(miss) < least) least = std::abs(miss), nearest = now_.travel;
        offset_ += back_->angle - estimate;
        if (truth) truth->take(now_.travel, miss);
        if (miss < 0.0)
            low = now_.travel, below = miss;
        else
            high = now_.travel, above = miss;
    }
    if (least <= limits::angle_jump) {
        if (!press_to(early, nearest)) return false;
        back_ = way_back(limits::force_fall);
        return true;
    }
    char text[160];
    std::snprintf(text, sizeof text, "the free angle jumps past the stop angle by at least %.3f degrees,",
                  least / degree);
    return fail(Outcome::stop_missed, text);
}

}  // namespace overbend::stroke
