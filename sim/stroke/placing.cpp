#include "sim/stroke/placing.h"

#include <string>

#include "sim/errors.h"
#include "sim/strip/place.h"
#include "sim/stroke/increment.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

namespace {

double gap_to(const StrokeScene& scene, tool::Role role) {
    IncrementSolver solver(scene, SolverOptions{});
    return solver.gap_at(unknowns_of(scene.strip), role);
}

double gap_to(const StrokeScene& scene, const tool::RigidTool& t) {
    StrokeScene alone = scene;
    alone.tools = {t};
    return gap_to(alone, t.role);
}

// Brings a pad from below, a clamp from above to the initial gap from the strip.
void bring_to_strip(const StrokeScene& scene, tool::RigidTool& t, double strip_low, double strip_high) {
    const double initial_gap = limits::contact_soft * scene.strip.thickness,
                 away = 2.0 * scene.strip.thickness;
    const tool::Box& box = t.outline.box();
    const bool from_above = t.role == tool::Role::clamp;
    t.position.y() = from_above ? strip_high + away - box.low.y() : strip_low - away - box.high.y();
    double gap = gap_to(scene, t);
    for (int i = 0; i < 400 && gap > initial_gap * 1.001; ++i) {
        if (gap > 1e9)
            throw OutOfRange("place",
                             std::string("the ") + tool::role_word(t.role) + " does not touch the strip",
                             "let it reach where the strip is bent");
        t.position.y() += (from_above ? -1.0 : 1.0) * (gap - initial_gap);
        gap = gap_to(scene, t);
    }
}

// The punch at the initial gap above the strip as it sags on the die.
void meet_sagging_strip(StrokeScene& scene) {
    StrokeScene rest = scene;
    rest.tools.clear();
    for (const tool::RigidTool& t : scene.tools)
        if (t.role == tool::Role::die) rest.tools.push_back(t);
    IncrementSolver solver(rest, SolverOptions{});
    SolverState c;
    c.strip = rest.strip;
    solver.start(c);
    if (!solver.apply_standing_loads(c)) return;  // the stroke will say so
    StrokeScene sagging = scene;
    sagging.strip = c.strip;
    const double initial_gap = limits::contact_soft * scene.strip.thickness;
    for (tool::RigidTool& t : scene.tools)
        if (t.role == tool::Role::punch) t.position.y() -= gap_to(sagging, t) - initial_gap;
}

}  // namespace

void place(StrokeScene& scene, double blank_position, double half_span, double at_x) {
    const double initial_gap = limits::contact_soft * scene.strip.thickness;
    strip::level(scene.strip, blank_position, half_span, at_x);

    // From well above, down by the least distance again and again: a distance is never more than the way
    // down.
    double top = -1e300, bottom = 1e300;
    for (const tool::RigidTool& t : scene.tools)
        if (t.role == tool::Role::die) top = std::max(top, t.position.y() + t.outline.box().high.y());
    const auto in_zone = [&](int i) {
        return scene.strip.blank_position[i] >= scene.zone.low &&
               scene.strip.blank_position[i] <= scene.zone.high;
    };
    for (int i = 0; i < scene.strip.nodes(); ++i)
        if (in_zone(i)) bottom = std::min(bottom, scene.strip.y[i]);
    strip::move(scene.strip, 0.0, 0.0, 0.0, 0.0, top - bottom + 2.0 * scene.strip.thickness);
    double gap = gap_to(scene, tool::Role::die);
    for (int i = 0; i < 400 && gap > initial_gap * 1.001; ++i) {
        if (gap > 1e9)
            throw OutOfRange("place", "the strip does not lie on the die", "place a bend line over the die");
        strip::move(scene.strip, 0.0, 0.0, 0.0, 0.0, -(gap - initial_gap));
        gap = gap_to(scene, tool::Role::die);
    }

    double strip_top = -1e300, strip_bottom = 1e300;
    for (int i = 0; i < scene.strip.nodes(); ++i)
        if (in_zone(i))
            strip_top = std::max(strip_top, scene.strip.y[i]),
            strip_bottom = std::min(strip_bottom, scene.strip.y[i]);
    for (tool::RigidTool& t : scene.tools)
        if (t.role == tool::Role::punch)
            t.position.y() = strip_top + 2.0 * scene.strip.thickness - t.outline.box().low.y();
    gap = gap_to(scene, tool::Role::punch);
    for (int i = 0; i < 400 && gap > initial_gap * 1.001; ++i) {
        if (gap > 1e9)
            throw OutOfRange("place", "the punch does not touch the strip",
                             "place a bend line under the punch");
        for (tool::RigidTool& t : scene.tools)
            if (t.role == tool::Role::punch) t.position.y() -= gap - initial_gap;
        gap = gap_to(scene, tool::Role::punch);
    }
    if (scene.weight > 0.0) meet_sagging_strip(scene);
    for (tool::RigidTool& t : scene.tools)
        if (t.role == tool::Role::pad || t.role == tool::Role::clamp)
            bring_to_strip(scene, t, strip_bottom, strip_top);
}

}  // namespace overbend::stroke
