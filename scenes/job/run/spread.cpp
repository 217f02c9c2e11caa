#include "scenes/job/run/spread.h"

#include <algorithm>
#include <cmath>
#include <future>

#include "scenes/files/case/work.h"

namespace overbend::job {

namespace {

constexpr double most_friction = 0.3;

files::Case coarse(const files::Case& c, const JobResult& job) {
    files::Case like = c;
    like.run.layers = std::min(c.run.layers, 7);
    like.run.elements_per_thickness = std::min(c.run.elements_per_thickness, 4.0);
    like.blank_length = job.blank.length, like.bend_lines = job.blank.bend_line;
    for (std::size_t i = 0; i < like.steps.size(); ++i) {
        if (like.steps[i].stop == files::StopKind::force) continue;
        like.steps[i].stop = files::StopKind::travel;
        like.steps[i].stop_value = job.steps[i].stroke.stop_travel;
    }
    return like;
}

// The ram stops where it did: a thinner strip is touched later.
files::Case thinner(files::Case c) {
    const double less = ranges_of(c).thickness;
    c.thickness -= less;
    for (files::Step& step : c.steps)
        if (step.stop == files::StopKind::travel) step.stop_value -= less;
    return c;
}

// Of every bend; empty when a stroke was not solved.
std::vector<double> angles_of(const files::Case& c) {
    ProcessOptions brief;
    brief.record = false;
    return run_process(c, brief).finished_angle;
}

// The last stroke on a bend makes it what it is.
std::optional<double> mechanics_of(const files::Case& c, int bend) {
    double agreed = 0.0;
    for (const files::Step& step : c.steps)
        if (std::count(step.bends.begin(), step.bends.end(), bend) > 0) agreed = files::agreement(c, step);
    return agreed > 0.0 ? std::optional<double>(agreed) : std::nullopt;
}

}  // namespace

Ranges ranges_of(const files::Case& c) {
    return {c.thickness_tolerance.value_or(files::usual_thickness_tolerance * c.thickness),
            c.material.strength_range, friction_range};
}

double AngleSpread::whole() const {
    const double m = mechanics.value_or(0.0);
    return std::sqrt(strength * strength + thickness * thickness + friction * friction + m * m);
}

std::vector<AngleSpread> angle_spread(const files::Case& c, const JobResult& job) {
    if (job.finished_angle.empty()) return {};
    const files::Case base = coarse(c, job);
    files::Case stronger = base, rougher = base;
    const Ranges range = ranges_of(c);
    stronger.material = material::with_strength(c.material, 1.0 + range.strength);
    rougher.run.friction +=
        c.run.friction + range.friction > most_friction ? -range.friction : range.friction;
    // Two at a time.
    auto beside = std::async(std::launch::async,
                             [&] { return std::make_pair(angles_of(stronger), angles_of(rougher)); });
    const std::vector<double> as_is = angles_of(base), thin = angles_of(thinner(base));
    const auto [strong, rough] = beside.get();
    if (as_is.empty() || thin.empty() || strong.empty() || rough.empty()) return {};

    std::vector<AngleSpread> spread(as_is.size());
    for (std::size_t b = 0; b < spread.size(); ++b) {
        spread[b].strength = std::abs(strong[b] - as_is[b]);
        spread[b].thickness = std::abs(thin[b] - as_is[b]);
        spread[b].friction = std::abs(rough[b] - as_is[b]);
        spread[b].mechanics = mechanics_of(c, static_cast<int>(b));
    }
    return spread;
}

}  // namespace overbend::job
