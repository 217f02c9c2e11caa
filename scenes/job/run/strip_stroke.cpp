#include "scenes/job/run/strip_stroke.h"

#include <algorithm>
#include <cstdio>
#include <utility>

#include "scenes/job/run/profile.h"
#include "scenes/job/run/weight.h"
#include "sim/errors.h"

namespace overbend::job {

namespace {

BendReading read(const BendFlats& flats, const stroke::Recording& r) {
    BendReading reading;
    reading.name = flats.name;
    for (const stroke::State& s : r.states) {
        if (s.phase != stroke::Phase::held && s.phase != stroke::Phase::free) continue;
        const BendShape shape = bend_shape(r, s, flats.left, flats.right);
        const bool free = s.phase == stroke::Phase::free;
        (free ? reading.free : reading.loaded) = flats.sense * shape.angle;
        (free ? reading.inside_radius_free : reading.inside_radius_loaded) = shape.inside_radius;
    }
    return reading;
}

}  // namespace

stroke::StrokeScene begin_scene(const StripOptions& o) {
    material::check(o.material);
    if (!(o.thickness > 0.0))
        throw OutOfRange("thickness", std::to_string(o.thickness) + " mm cannot be", "give more than 0 mm");
    stroke::StrokeScene scene;
    scene.law = material::LayerLaw(o.material, o.width ? material::width_hold(*o.width / o.thickness) : 1.0);
    scene.friction = o.friction;
    if (o.weighs) scene.weight = weight_of(o.material, o.thickness);
    return scene;
}

void lay_strip(stroke::StrokeScene& scene, const StripOptions& o, double length,
               const std::vector<strip::FineZone>& zones) {
    strip::MeshOptions mesh;
    mesh.elements_per_thickness = o.elements_per_thickness;
    scene.strip =
        strip::flat_strip(o.thickness, strip::mesh_blank(length, o.thickness, zones, mesh), o.layers);
    scene.zone = {0.0, length};
}

StripStroke finish(stroke::StrokeScene scene, std::vector<BendFlats> bends, double travel_limit) {
    scene.stop.left = bends.front().left;
    scene.stop.right = bends.front().right;
    scene.stop.travel_limit = travel_limit;
    return {std::move(scene), std::move(bends)};
}

double half_core(double radius, double thickness, double angle) {
    return 0.5 * angle * (radius + 0.5 * thickness) + thickness;
}

StripResult press_strip(const StripStroke& given, const stroke::Stop& stop,
                        const stroke::StrokeOptions& options) {
    stroke::StrokeScene scene = given.scene;
    const stroke::Stop placed = scene.stop;
    scene.stop = stop;
    scene.stop.left = placed.left, scene.stop.right = placed.right;
    scene.stop.travel_limit = std::min(stop.travel_limit, placed.travel_limit);
    if (stop.kind == stroke::StopKind::free_angle) scene.stop.value *= given.bends.front().sense;

    StripResult result;
    result.stroke = stroke::press(scene, options);
    for (const BendFlats& flats : given.bends) result.bends.push_back(read(flats, result.stroke.recording));
    return result;
}

}  // namespace overbend::job
