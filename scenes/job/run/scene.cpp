#include "scenes/job/run/scene.h"

#include <algorithm>
#include <cmath>

#include "scenes/job/run/press_blocks.h"
#include "scenes/job/run/step_tools.h"
#include "sim/errors.h"
#include "sim/strip/place.h"
#include "sim/stroke/placing.h"

namespace overbend::job {

namespace {

bool makes(const files::Step& step, int bend) {
    return std::find(step.bends.begin(), step.bends.end(), bend) != step.bends.end();
}

// The part of the blank that this step's tools may press; it ends short of other bends made before, whose
// flanges must stay clear of the tools.
stroke::FormingZone forming_zone(const Blank& blank, const files::Step& step, const Hold& hold,
                                 const std::vector<bool>& made) {
    const bool turned = step.first == files::First::right;
    stroke::FormingZone zone;
    zone.low = blank.bend_line[step.bends.front()] - (turned ? hold.reach_right : hold.reach_left);
    zone.high = blank.bend_line[step.bends.back()] + (turned ? hold.reach_left : hold.reach_right);
    for (std::size_t b = 0; b < made.size(); ++b) {
        if (!made[b] || makes(step, static_cast<int>(b))) continue;
        const double line = blank.bend_line[b], half = blank.half_arc[b];
        if (line < blank.bend_line[step.bends.front()])
            zone.low = std::max(zone.low, line + half);
        else
            zone.high = std::min(zone.high, line - half);
    }
    return zone;
}

// Both layers of a hem and what is to be left between its faces, from where its punch stands.
stroke::Stop gap_stop(const files::Case& c, double punch_height, double gap) {
    stroke::Stop stop;
    stop.kind = stroke::StopKind::travel;
    stop.value = punch_height - 2.0 * c.thickness - gap;
    return stop;
}

stroke::Stop make_stop(const files::Case& c, const Blank& blank, const files::Step& step, const Hold& hold,
                       double punch_height) {
    // As placed the left one of an offset's bends turns up, and so do all others but wiped ones.
    const int bend = step.first == files::First::right ? step.bends.back() : step.bends.front();
    const files::WorkKind& work = files::work_of(c.tools[step.die]);
    stroke::Stop stop;
    switch (step.stop) {
        case files::StopKind::drawing_angle:
            if (work.lays_hem) {
                stop = gap_stop(c, punch_height, 2.0 * c.part.bends[bend].inside_radius);
            } else {
                stop.kind = stroke::StopKind::free_angle;
                stop.value = work.sense * std::abs(c.part.bends[bend].angle);
            }
            break;
        case files::StopKind::free_angle:
            stop.kind = stroke::StopKind::free_angle, stop.value = work.sense * step.stop_value;
            break;
        case files::StopKind::travel:
            stop.kind = stroke::StopKind::travel, stop.value = step.stop_value;
            break;
        case files::StopKind::force:
            stop.kind = stroke::StopKind::force, stop.value = step.stop_value * 1000.0 / c.width;
            break;
        case files::StopKind::gap:
            stop = gap_stop(c, punch_height, step.stop_value);
            break;
    }
    stop.left = blank.flat_middle(bend);
    stop.right = blank.flat_middle(bend + 1);
    stop.travel_limit = punch_height + hold.depth;
    return stop;
}

// N per mm2 of the strip's face.
double weight_of(const material::Card& card, double thickness) {
    constexpr double standard_gravity = 9.80665;                                        // m/s2, by definition
    if (card.density > 0.0) return card.density * 1e-9 * standard_gravity * thickness;  // kg/mm3
    throw OutOfRange("density", "the card of " + card.name + " has no density, so its weight is not known",
                     "give density_kg_m3 in the card, or leave gravity out");
}

}  // namespace

strip::StripState make_strip(const files::Case& c, double length, const std::vector<strip::FineZone>& zones) {
    strip::MeshOptions mesh;
    mesh.elements_per_thickness = c.run.elements_per_thickness;
    return strip::flat_strip(c.thickness, strip::mesh_blank(length, c.thickness, zones, mesh), c.run.layers);
}

strip::StripState make_strip(const files::Case& c, const Blank& blank) {
    std::vector<strip::FineZone> zones;
    for (const files::Step& step : c.steps)
        for (const int b : step.bends) {
            const Hold hold = hold_of(c, blank, step);
            strip::FineZone zone;
            zone.centre = blank.bend_line[b];
            zone.core = std::max(c.thickness, blank.half_arc[b]);
            zone.reach = std::max({zone.core, hold.reach_left, hold.reach_right});
            zones.push_back(zone);
        }
    return make_strip(c, blank.length, zones);
}

stroke::StrokeScene make_scene(const files::Case& c, const Blank& blank, const files::Step& step,
                               const strip::StripState& strip, const std::vector<bool>& made) {
    stroke::StrokeScene scene;
    scene.strip = strip;
    if (scene.strip.face_down != (step.face == files::Face::down)) strip::turn_over(scene.strip);
    if (scene.strip.turned != (step.first == files::First::right)) strip::turn_end_for_end(scene.strip);
    scene.law = material::LayerLaw(c.material, material::width_hold(c.width / c.thickness));
    scene.friction = c.run.friction;
    if (c.run.gravity) scene.weight = weight_of(c.material, c.thickness);
    scene.touches_itself = files::work_of(c.tools[step.die]).lays_hem;
    scene.tools = tools_of(c, step);

    const Hold hold = hold_of(c, blank, step);
    scene.zone = forming_zone(blank, step, hold, made);
    const double half_span =
        std::min({hold.half_span, hold.level_at - scene.zone.low, scene.zone.high - hold.level_at});
    stroke::place(scene, hold.level_at, std::max(half_span, c.thickness), hold.at_x);
    const tool::RigidTool punch = scene.tools[0], die = scene.tools[1];
    for (const tool::ToolSet& more : {press_blocks(c, punch, die), gauge_at(c, scene.strip)})
        scene.tools.insert(scene.tools.end(), more.begin(), more.end());
    scene.stop = make_stop(c, blank, step, hold, scene.tools.front().position.y());
    return scene;
}

}  // namespace overbend::job
