#include "scenes/job/run/hem_bend.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "scenes/job/run/vee_bend.h"
#include "sim/errors.h"
#include "sim/strip/place.h"
#include "sim/stroke/placing.h"
#include "sim/tool/block.h"
#include "sim/tool/figures.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

double flange_of(const HemBend& b) {
    return b.flange.value_or(b.hem + 4.0 * b.thickness);
}

VeeBend first_bend(const HemBend& b) {
    VeeBend vee;
    static_cast<StripOptions&>(vee) = b;
    vee.die_opening = b.die_opening;
    vee.shoulder_radius = b.shoulder_radius;
    vee.nose_radius = b.nose_radius;
    // slimmer than what is left between the flanks under load
    vee.punch_angle = std::max(0.4 * (pi - b.first_free), 0.07);
    vee.left_flange = b.hem;
    vee.flange = flange_of(b);
    return vee;
}

void check(const HemBend& b) {
    const double least = 0.5 * b.die_opening + b.thickness;
    const auto reaches_over = [&](const char* name, double length) {
        if (length >= least) return;
        throw OutOfRange(name, tool::mm(length) + " does not reach over the shoulder of the first die",
                         "give at least " + tool::mm(least) + ", or a narrower die opening");
    };
    reaches_over("hem", b.hem);
    reaches_over("flange", flange_of(b));
    constexpr double least_first = 100.0 * degree, most_first = 170.0 * degree;
    if (!(b.first_free >= least_first && b.first_free <= most_first))
        throw OutOfRange("bend angle of the first stroke", tool::deg(b.first_free) + " cannot be laid flat",
                         "give from 100 to 170 deg");
}

// Half of the blank that a closed bend takes up.
double half_arc(const HemBend& b) {
    return half_core(b.nose_radius, b.thickness, pi) - b.thickness;
}

tool::ToolSet flat_tools(const HemBend& b) {
    const double longer = std::max(b.hem, flange_of(b));
    const tool::Block face{2.0 * longer + 8.0 * b.thickness, 0.0, 0.0,
                           std::max(0.5 * longer, 8.0 * b.thickness)};
    tool::ToolSet tools;
    tools.push_back({"flat punch", tool::Role::punch, tool::block_facing_down(face), tool::Vec2::Zero()});
    tools.push_back({"flat die", tool::Role::die, tool::block_facing_up(face), tool::Vec2::Zero()});
    return tools;
}

}  // namespace

StripStroke hem_first_stroke(const HemBend& b) {
    check(b);
    const VeeBend vee = first_bend(b);
    StripStroke first = vee_stroke(vee);
    first.scene.stop.kind = stroke::StopKind::free_angle;
    first.scene.stop.value = b.first_free;
    return first;
}

StripStroke hem_second_stroke(const HemBend& b, const strip::StripState& bent) {
    check(b);
    stroke::StrokeScene scene = begin_scene(b);
    scene.tools = flat_tools(b);
    scene.touches_itself = true;
    scene.strip = bent;
    scene.zone = {0.0, b.hem + flange_of(b)};
    const double straight = flange_of(b) - half_arc(b), middle = b.hem + half_arc(b) + 0.5 * straight;
    stroke::place(scene, middle, 0.4 * straight, 0.0);
    constexpr double squeezed = 1.6;  // thicknesses between the faces at which both layers are squeezed
    const double limit = scene.tools.front().position.y() - squeezed * b.thickness;
    return finish(std::move(scene), {{"bend", 1.0, 0.5 * (b.hem - half_arc(b)), middle}}, limit);
}

stroke::Stop hem_gap_stop(const StripStroke& second, double gap) {
    stroke::Stop stop;
    stop.kind = stroke::StopKind::travel;
    stop.value = second.scene.tools.front().position.y() - 2.0 * second.scene.strip.thickness - gap;
    return stop;
}

double hem_gap(const HemBend& b, const strip::StripState& s) {
    double greatest = 0.0;
    constexpr int places = 20;
    const double line = b.hem;
    const strip::MidPoint base =
        strip::mid_point(s, line + half_arc(b) + 0.25 * (flange_of(b) - half_arc(b)));
    for (int i = 0; i <= places; ++i) {
        const strip::MidPoint m = strip::mid_point(s, 0.5 * i / places * (b.hem - half_arc(b)));
        const double dx = m.x - base.x, dy = m.y - base.y;
        const double between = -std::sin(base.theta) * dx + std::cos(base.theta) * dy;
        greatest = std::max(greatest, between - b.thickness);
    }
    return greatest;
}

StripResult bend_hem(const HemBend& b, const HemStop& stop, const stroke::StrokeOptions& options) {
    const StripStroke first = hem_first_stroke(b);
    stroke::StrokeOptions unrecorded = options;
    unrecorded.record = false;
    StripResult result;
    result.stroke = stroke::press(first.scene, unrecorded);
    if (result.stroke.outcome != stroke::Outcome::reached) {
        result.stroke.reason = "first stroke: " + result.stroke.reason;
        return result;
    }
    const StripStroke second = hem_second_stroke(b, result.stroke.free);
    stroke::Stop last = hem_gap_stop(second, stop.gap.value_or(0.0));
    if (stop.force) last.kind = stroke::StopKind::force, last.value = *stop.force;
    result = press_strip(second, last, options);
    if (result.stroke.solved())
        result.measures.push_back(
            {"gap_free_mm", "gap between the faces free", hem_gap(b, result.stroke.free), "mm"});
    return result;
}

}  // namespace overbend::job
