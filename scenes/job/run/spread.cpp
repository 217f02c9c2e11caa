#include "scenes/job/run/spread.h"

#include <algorithm>
#include <cmath>
#include <future>

#include "scenes/files/case/work.h"

namespace overbend::job {

namespace {

constexpr double friction_range = 0.05;

// Small against the ranges, so that tools that close on the strip still take it.
constexpr double strength_step = 0.05, thickness_step = -0.02, friction_step = 0.03;

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
files::Case thinner(files::Case c, double share) {
    const double more = share * c.thickness;
    c.thickness += more;
    for (files::Step& step : c.steps)
        if (step.stop == files::StopKind::travel) step.stop_value += more;
    return c;
}

// Of every bend; empty when a stroke was not solved.
std::vector<double> angles_of(const files::Case& c) {
    ProcessOptions brief;
    brief.record = false;
    return run_process(c, brief).finished_angle;
}

std::optional<double> mechanics_of(const files::Case& c, int bend) {
    std::optional<double> worst;
    for (const files::Step& step : c.steps) {
        if (std::count(step.bends.begin(), step.bends.end(), bend) == 0) continue;
        const double agreed = files::agreement(c, step);
        if (agreed == 0.0) return std::nullopt;
        worst = agreed;  // the last stroke makes it what it is
    }
    return worst;
}

}  // namespace

double AngleSpread::whole() const {
    const double m = mechanics.value_or(0.0);
    return std::sqrt(strength * strength + thickness * thickness + friction * friction + m * m);
}

std::vector<AngleSpread> angle_spread(const files::Case& c, const JobResult& job) {
    if (job.finished_angle.empty()) return {};
    const files::Case base = coarse(c, job);
    files::Case stronger = base, rougher = base;
    stronger.material = material::with_strength(c.material, 1.0 + strength_step);
    const double rub = c.run.friction + friction_step > 0.3 ? -friction_step : friction_step;
    rougher.run.friction += rub;
    // Two at a time.
    auto beside = std::async(std::launch::async,
                             [&] { return std::make_pair(angles_of(stronger), angles_of(rougher)); });
    const std::vector<double> as_is = angles_of(base), thin = angles_of(thinner(base, thickness_step));
    const auto [strong, rough] = beside.get();
    if (as_is.empty() || thin.empty() || strong.empty() || rough.empty()) return {};

    const double thickness_range =
        c.thickness_tolerance.value_or(files::usual_thickness_tolerance * c.thickness) / c.thickness;
    std::vector<AngleSpread> spread(as_is.size());
    for (std::size_t b = 0; b < spread.size(); ++b) {
        const auto to_range = [&](double other, double step, double range) {
            return std::abs((other - as_is[b]) / step) * range;
        };
        spread[b].strength = to_range(strong[b], strength_step, c.material.strength_range);
        spread[b].thickness = to_range(thin[b], thickness_step, thickness_range);
        spread[b].friction = to_range(rough[b], rub, friction_range);
        spread[b].mechanics = mechanics_of(c, static_cast<int>(b));
    }
    return spread;
}

}  // namespace overbend::job
