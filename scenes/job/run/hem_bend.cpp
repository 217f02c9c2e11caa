#include <algorithm>
#include <cmath>

#include "scenes/files/case/work.h"
#include "scenes/job/run/strip_bends.h"
#include "sim/errors.h"
#include "sim/strip/place.h"
#include "sim/tool/figures.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

struct Hem {
    StripCase strip;
    files::Step first, second;
};

Hem make_hem(const HemBend& b) {
    const double t = b.thickness, flange = b.flange.value_or(b.hem + 4.0 * t);
    const char *short_of = "does not reach over the shoulder of the first die",
               *or_else = ", or a narrower die opening";
    at_least("hem", b.hem, 0.5 * b.die_opening + t, short_of, or_else);
    at_least("flange", flange, 0.5 * b.die_opening + t, short_of, or_else);
    constexpr double least_first = 100.0 * degree, most_first = 170.0 * degree;
    if (!(b.first_free >= least_first && b.first_free <= most_first))
        throw OutOfRange("bend angle of the first stroke", tool::deg(b.first_free) + " cannot be laid flat",
                         "give from 100 to 170 deg");

    // The tools and the mesh of the first stroke are a V bend's.
    VeeBend vee;
    static_cast<StripOptions&>(vee) = b;
    vee.die_opening = b.die_opening;
    vee.shoulder_radius = b.shoulder_radius;
    vee.nose_radius = b.nose_radius;
    // slimmer than what is left between the flanks under load
    vee.punch_angle = std::max(0.4 * (pi - b.first_free), 0.07);
    vee.left_flange = b.hem;
    vee.flange = flange;
    Hem hem{vee_case(vee), {}, {}};

    hem.first = only_step(hem.strip);
    hem.first.stop = files::StopKind::free_angle, hem.first.stop_value = b.first_free;
    hem.strip.job.part.bends.front().angle = pi;
    hem.strip.blank.half_arc = {files::half_core(b.nose_radius, t, pi) - t};
    const double longer = std::max(b.hem, flange);
    const tool::Block face{2.0 * longer + 8.0 * t, 0.0, 0.0, std::max(0.5 * longer, 8.0 * t)};
    hem.strip.job.tools.push_back({"flat punch", files::FlatPunch{face}});
    hem.strip.job.tools.push_back({"flat die", files::FlatDie{face}});
    hem.second = hem.first;
    hem.second.punch = 2, hem.second.die = 3;
    hem.second.stop = files::StopKind::gap, hem.second.stop_value = 0.0;
    return hem;
}

// Greatest distance between the inner faces over the hem's outer half, less 0 where they touch.
double gap_between(const Blank& blank, const strip::StripState& s) {
    double greatest = 0.0;
    constexpr int places = 20;
    const double end = blank.flat_end(0), begin = blank.flat_begin(1);
    const strip::MidPoint base = strip::mid_point(s, begin + 0.25 * (blank.length - begin));
    for (int i = 0; i <= places; ++i) {
        const strip::MidPoint m = strip::mid_point(s, 0.5 * i / places * end);
        const double dx = m.x - base.x, dy = m.y - base.y;
        const double between = -std::sin(base.theta) * dx + std::cos(base.theta) * dy;
        greatest = std::max(greatest, between - s.thickness);
    }
    return greatest;
}

// Flat tools that touch the leg too early press it open again, and close all the same.
void look_at_fold(double first_free, StripResult& result) {
    const double free = result.bends.front().free;
    if (free >= first_free - 1.0 * degree) return;
    result.stroke.outcome = stroke::Outcome::pressed_open;
    result.stroke.reason = "the leg does not fold over, it is pressed open to a bend angle of " +
                           tool::deg(free) + "; bend it further in the first stroke";
}

StripStroke second_stroke(Hem hem, const strip::StripState& bent) {
    hem.strip.read_at.clear();
    return set_up(hem.strip, hem.second, &bent);
}

}  // namespace

StripStroke hem_first_stroke(const HemBend& b) {
    const Hem hem = make_hem(b);
    return set_up(hem.strip, hem.first);
}

StripStroke hem_second_stroke(const HemBend& b, const strip::StripState& bent) {
    return second_stroke(make_hem(b), bent);
}

StripResult bend_hem(const HemBend& b, const HemStop& stop, const stroke::StrokeOptions& options) {
    Hem hem = make_hem(b);
    stroke::StrokeOptions unrecorded = options;
    unrecorded.record = false;
    StripResult result;
    result.stroke = stroke::press(set_up(hem.strip, hem.first).scene, unrecorded);
    if (result.stroke.outcome != stroke::Outcome::reached) {
        result.stroke.reason = "first stroke: " + result.stroke.reason;
        return result;
    }
    hem.second.stop_value = stop.gap.value_or(0.0);
    StripStroke second = second_stroke(hem, result.stroke.free);
    if (stop.force) second.scene.stop.kind = stroke::StopKind::force, second.scene.stop.value = *stop.force;
    result = press_strip(second, second.scene.stop, options);
    if (result.stroke.solved()) look_at_fold(b.first_free, result);
    if (result.stroke.solved() && result.stroke.outcome != stroke::Outcome::pressed_open)
        result.measures.push_back({"gap_free_mm", "gap between the faces free",
                                   gap_between(hem.strip.blank, result.stroke.free), "mm"});
    return result;
}

}  // namespace overbend::job
