// What a stroke requires of the press, read from its recording.

#include <algorithm>
#include <cmath>

#include "scenes/job/shop/shop_parts.h"

namespace overbend::job {

namespace {

using stroke::Phase;
using stroke::Recording;
using stroke::State;

const State& hardest(const Recording& r) {
    return *std::max_element(r.states.begin(), r.states.end(),
                             [](const State& a, const State& b) { return a.punch_force < b.punch_force; });
}

// Where the forces on what moves with the ram have their middle.
double load_centre(const Recording& r) {
    double force = 0.0, turn = 0.0;
    for (const stroke::ContactForce& f : hardest(r).contacts) {
        if (!r.tools[f.tool].moves_with_ram()) continue;
        force += f.force.y(), turn += f.force.y() * f.at.x();
    }
    return force == 0.0 ? 0.0 : turn / force;
}

double block_height(const std::optional<files::PressBlock>& block) {
    return block ? block->height : 0.0;
}

double tools_closed(const files::Case& c, const StepResult& step) {
    const tool::RigidTool &punch = step.stroke.recording.tools[0], &die = step.stroke.recording.tools[1];
    const double top = punch.position.y() - step.stroke.stop_travel + punch.outline.box().high.y();
    const double bottom = die.position.y() + die.outline.box().low.y();
    const double holders =
        c.press ? block_height(c.press->punch_holder) + block_height(c.press->die_holder) : 0.0;
    return top - bottom + holders;
}

// How far the strip goes up and down between the tools, and back.
struct Extent {
    double low = 0.0, high = 0.0, back = 0.0;
};
Extent extent_of(const State& s, double thickness, double half_width) {
    Extent e;
    for (std::size_t i = 0; i < s.x.size(); ++i) {
        e.back = std::max(e.back, s.x[i] + 0.5 * thickness);
        if (std::abs(s.x[i]) > half_width) continue;
        e.low = std::min(e.low, s.y[i] - 0.5 * thickness);
        e.high = std::max(e.high, s.y[i] + 0.5 * thickness);
    }
    return e;
}

double half_width(const tool::RigidTool& t) {
    return std::max(-t.outline.box().low.x(), t.outline.box().high.x());
}

// For the freed strip to come out forwards, the punch's tip must be as high above the die as the strip
// between the tools is from its lowest to its highest point.
double part_room(const files::Case& c, const StepResult& step) {
    const Recording& r = step.stroke.recording;
    const double wide = std::max(half_width(r.tools[0]), half_width(r.tools[1]));
    double room = 0.0;
    for (const State& s : r.states) {
        if (s.phase != Phase::placed && s.phase != Phase::free) continue;
        const Extent e = extent_of(s, c.thickness, wide);
        room = std::max(room, e.high - e.low);
    }
    const double tip = r.tools[0].position.y() - step.stroke.stop_travel;
    return std::max(0.0, room - tip);
}

// Down to the stop, which is the bottom of an eccentric press.
std::vector<shop::ForceAt> on_the_way(const stroke::StrokeResult& stroke) {
    std::vector<shop::ForceAt> all;
    for (const stroke::CurvePoint& p : stroke.curve) {
        all.push_back({stroke.stop_travel - p.travel, p.force});
        if (p.travel >= stroke.stop_travel) break;
    }
    return all;
}

double reach_back(const files::Case& c, const Recording& r) {
    double back = 0.0;
    for (const State& s : r.states) back = std::max(back, extent_of(s, c.thickness, 0.0).back);
    return back;
}

}  // namespace

shop::PressLimits press_limits(const files::Press& press) {
    shop::PressLimits limits;
    limits.force = press.force, limits.stroke = press.stroke;
    limits.daylight = press.daylight, limits.throat = press.throat;
    if (press.gauge) limits.gauge_reach = press.gauge->reach, limits.gauge_nearest = press.gauge->nearest;
    limits.line_load = press.line_load, limits.off_centre = press.off_centre, limits.energy = press.energy;
    limits.speeds = press.speeds, limits.eccentric = press.eccentric;
    return limits;
}

StrokeOnPress stroke_on_press(const files::Case& c, const JobResult& job, int index) {
    const files::Step& step = c.steps[index];
    const StepResult& run = job.steps[index];
    StrokeOnPress on;
    on.step = index;
    shop::StrokeDemand& d = on.demand;
    d.strip_width = c.width;
    d.peak_force = run.stroke.peak_force;
    d.load_centre = load_centre(run.stroke.recording);
    d.stop_travel = run.stroke.stop_travel;
    d.work = run.stroke.audit.largest * c.width / 1000.0;
    d.tools_closed = tools_closed(c, run);
    d.part_room = part_room(c, run);
    d.reach_back = reach_back(c, run.stroke.recording);
    d.gauge = run.gauge;
    d.punch_rating = c.tools[step.punch].make.rating;
    d.die_rating = c.tools[step.die].make.rating;
    d.on_the_way = on_the_way(run.stroke);
    on.cycle_s = c.handling.stroke;  // with loading; see job_figures
    if (!c.press) return on;
    const shop::PressLimits limits = press_limits(*c.press);
    on.checks = shop::press_checks(limits, d);
    for (Finding& f : on.checks) f.place = on_step(index, state_at(run.stroke.recording, 1e300));
    if (limits.speeds)
        on.cycle_s = shop::cycle_time(*limits.speeds, shop::ram_rise(limits, d), d.stop_travel);
    return on;
}

}  // namespace overbend::job
