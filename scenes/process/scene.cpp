#include "scenes/process/scene.h"

#include <algorithm>
#include <cmath>

#include "sim/strip/mesh.h"
#include "sim/strip/place.h"
#include "sim/stroke/placing.h"

namespace overbend::scenes {

namespace {

template <class Shape>
const Shape* shape_of(const Tool& t) {
    return std::get_if<Shape>(&t.shape);
}

// What a die does with the strip: how far from the bend lines it may press it, how wide it holds it level
// before the stroke, and how deep the punch's lowest point may go below the die's top face.
struct DieReach {
    double reach = 0.0;
    double half_span = 0.0;
    double depth = 1e300;
};

DieReach vee_reach(double opening, double shoulder, double depth, double bend_angle, double thickness) {
    // Under load the strip runs along the flanks of the angle it has: its length between the shoulders.
    const double half_included = 0.5 * (3.14159265358979 - std::min(std::abs(bend_angle) + 0.1, 2.6));
    return {0.5 * opening / std::sin(half_included) + shoulder + 2.0 * thickness, 0.5 * opening + shoulder,
            depth};
}

DieReach die_reach(const Case& c, const Step& step) {
    const Tool& die = c.tools[step.die];
    double angle = 0.0;
    for (const int b : step.bends) angle = std::max(angle, std::abs(c.part.bends[b].angle));
    const double t = c.thickness;
    if (const tool::VeeDie* vee = shape_of<tool::VeeDie>(die)) {
        const tool::VeeFace& face = vee->faces[step.die_face - 1];
        return vee_reach(face.die_opening, face.shoulder_radius, tool::groove_depth(face) - 0.5 * t, angle,
                         t);
    }
    if (const tool::OpenDie* open = shape_of<tool::OpenDie>(die))
        return vee_reach(open->die_opening, open->shoulder_radius, open->depth - t, angle, t);
    if (const tool::OffsetDie* offset = shape_of<tool::OffsetDie>(die))
        return {offset->land + offset->offset + 2.0 * t, offset->offset + 2.0 * t, offset->offset - 0.7 * t};
    if (const tool::ChannelDie* channel = shape_of<tool::ChannelDie>(die))
        return {channel->depth + 2.0 * channel->shoulder_radius + 4.0 * t, 0.5 * channel->die_opening,
                channel->depth - 0.7 * t};
    const tool::Box& box = std::get<OutlineTool>(die.shape).outline.box();
    return {0.5 * (box.high.x() - box.low.x()), 0.25 * (box.high.x() - box.low.x()),
            box.high.y() - box.low.y()};
}

tool::ArcOutline outline_of(const Tool& t, int face) {
    if (const tool::VeeDie* vee = shape_of<tool::VeeDie>(t)) return tool::make_outline(*vee, face);
    if (const OutlineTool* given = shape_of<OutlineTool>(t)) return given->outline;
    return std::visit(
        [](const auto& shape) -> tool::ArcOutline {
            using Shape = std::decay_t<decltype(shape)>;
            if constexpr (std::is_same_v<Shape, tool::VeeDie>)
                return tool::make_outline(shape, 1);
            else if constexpr (std::is_same_v<Shape, OutlineTool>)
                return shape.outline;
            else
                return tool::make_outline(shape);
        },
        t.shape);
}

// The part of the blank that this step's tools may press; it ends short of bends made before, whose flanges
// must stay clear of the tools.
stroke::FormingZone forming_zone(const Blank& blank, const Step& step, double reach,
                                 const std::vector<bool>& made) {
    stroke::FormingZone zone;
    zone.low = blank.bend_line[step.bends.front()] - reach;
    zone.high = blank.bend_line[step.bends.back()] + reach;
    for (std::size_t b = 0; b < made.size(); ++b) {
        if (!made[b]) continue;
        const double line = blank.bend_line[b], half = blank.half_arc[b];
        if (line < blank.bend_line[step.bends.front()])
            zone.low = std::max(zone.low, line + half);
        else
            zone.high = std::min(zone.high, line - half);
    }
    return zone;
}

stroke::Stop make_stop(const Case& c, const Blank& blank, const Step& step) {
    stroke::Stop stop;
    // As placed the left one of an offset's bends turns up, and so do all others.
    const int bend = step.first == First::right ? step.bends.back() : step.bends.front();
    stop.left = blank.flat_middle(bend);
    stop.right = blank.flat_middle(bend + 1);
    switch (step.stop) {
        case StopKind::drawing_angle:
            stop.kind = stroke::StopKind::free_angle, stop.value = std::abs(c.part.bends[bend].angle);
            break;
        case StopKind::free_angle:
            stop.kind = stroke::StopKind::free_angle, stop.value = step.stop_value;
            break;
        case StopKind::travel:
            stop.kind = stroke::StopKind::travel, stop.value = step.stop_value;
            break;
        case StopKind::force:
            stop.kind = stroke::StopKind::force, stop.value = step.stop_value * 1000.0 / c.width;
            break;
    }
    return stop;
}

}  // namespace

strip::StripState make_strip(const Case& c, const Blank& blank) {
    std::vector<strip::FineZone> zones;
    for (const Step& step : c.steps)
        for (const int b : step.bends) {
            strip::FineZone zone;
            zone.centre = blank.bend_line[b];
            zone.core = std::max(c.thickness, blank.half_arc[b]);
            zone.reach = std::max(zone.core, die_reach(c, step).reach);
            zones.push_back(zone);
        }
    strip::MeshOptions mesh;
    mesh.elements_per_thickness = c.run.elements_per_thickness;
    return strip::flat_strip(c.thickness, strip::mesh_blank(blank.length, c.thickness, zones, mesh),
                             c.run.layers);
}

stroke::StrokeScene make_scene(const Case& c, const Blank& blank, const Step& step,
                               const strip::StripState& strip, const std::vector<bool>& made) {
    stroke::StrokeScene scene;
    scene.strip = strip;
    if (scene.strip.face_down != (step.face == Face::down)) strip::turn_over(scene.strip);
    if (scene.strip.turned != (step.first == First::right)) strip::turn_end_for_end(scene.strip);
    scene.law = material::LayerLaw(c.material, material::width_hold(c.width / c.thickness));
    scene.friction = c.run.friction;
    scene.tools.push_back({c.tools[step.punch].name, tool::Role::punch, outline_of(c.tools[step.punch], 1),
                           tool::Vec2::Zero()});
    scene.tools.push_back({c.tools[step.die].name, tool::Role::die,
                           outline_of(c.tools[step.die], step.die_face), tool::Vec2::Zero()});

    const DieReach reach = die_reach(c, step);
    scene.zone = forming_zone(blank, step, reach.reach, made);
    const double middle = 0.5 * (blank.bend_line[step.bends.front()] + blank.bend_line[step.bends.back()]);
    double half_span = reach.half_span;
    half_span = std::min({half_span, middle - scene.zone.low, scene.zone.high - middle});
    stroke::place(scene, middle, std::max(half_span, c.thickness), step.shift);
    scene.stop = make_stop(c, blank, step);
    scene.stop.travel_limit = scene.tools.front().position.y() + reach.depth;
    return scene;
}

}  // namespace overbend::scenes
