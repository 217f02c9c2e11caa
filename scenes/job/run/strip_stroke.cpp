#include "scenes/job/run/strip_stroke.h"

#include <algorithm>
#include <utility>

#include "scenes/files/case/work.h"
#include "scenes/job/run/profile.h"
#include "scenes/job/run/scene.h"
#include "sim/errors.h"
#include "sim/tool/figures.h"

namespace overbend::job {

namespace {

BendReading read(const BendFlats& flats, const stroke::Recording& r) {
    BendReading reading;
    reading.name = flats.name;
    each_read_state(r, [&](const stroke::State& s, bool free) {
        const BendShape shape = bend_shape(r, s, flats.left, flats.right);
        (free ? reading.free : reading.loaded) = flats.sense * shape.angle;
        (free ? reading.inside_radius_free : reading.inside_radius_loaded) = shape.inside_radius;
    });
    return reading;
}

}  // namespace

StripCase strip_case(const StripOptions& o, double length) {
    material::check(o.material);
    if (!(o.thickness > 0.0))
        throw OutOfRange("thickness", std::to_string(o.thickness) + " mm cannot be", "give more than 0 mm");
    StripCase s;
    s.job.material = o.material;
    s.job.thickness = o.thickness;
    s.job.width = o.width.value_or(std::max(1000.0, 10.0 * o.thickness));  // wide: in plane strain
    s.job.run = {o.friction, o.layers, o.elements_per_thickness, o.weighs};
    s.blank.length = length;
    return s;
}

void add_bend(StripCase& s, const char* name, double angle, double bend_line, double half_arc) {
    s.job.part.bends.push_back({name, angle, 0.0});
    s.blank.bend_line.push_back(bend_line);
    s.blank.half_arc.push_back(half_arc);
    s.zones.push_back({bend_line, half_arc + s.job.thickness, s.blank.length});
}

files::Step only_step(const StripCase& s) {
    files::Step step;
    for (int b = 0; b < static_cast<int>(s.job.part.bends.size()); ++b) step.bends.push_back(b);
    step.die = 1;
    step.stop = files::StopKind::travel;
    if (s.job.tools.size() > 2) (s.job.tools[2].is_pad() ? step.pad : step.clamp) = 2;
    return step;
}

StripStroke set_up(const StripCase& given, const files::Step& step, const strip::StripState* bent) {
    StripCase s = given;
    for (int i = 0; i <= static_cast<int>(s.job.part.bends.size()); ++i)
        s.job.part.flats.push_back(s.blank.flat_end(i) - s.blank.flat_begin(i));
    files::check_pair(s.job.tools[step.punch], s.job.tools[step.die], step.die_face, s.job.thickness);
    const strip::StripState strip = bent ? *bent : make_strip(s.job, s.blank.length, s.zones);
    stroke::StrokeScene scene =
        make_scene(s.job, s.blank, step, strip, std::vector<bool>(s.job.part.bends.size(), false));
    for (const tool::RigidTool& t : scene.tools)
        if (t.spring) tool::check(*t.spring);
    if (!bent) {  // touched where its mesh is fine
        scene.zone = {1e300, -1e300};
        for (const strip::FineZone& z : s.zones) {
            scene.zone.low = std::min(scene.zone.low, z.centre - z.reach);
            scene.zone.high = std::max(scene.zone.high, z.centre + z.reach);
        }
    }
    StripStroke stroke{std::move(scene), {}};
    const auto at = [&](int i) { return s.read_at.empty() ? s.blank.flat_middle(i) : s.read_at[i]; };
    for (int b = 0; b < static_cast<int>(s.job.part.bends.size()); ++b) {
        const files::Bend& bend = s.job.part.bends[b];
        stroke.bends.push_back({bend.name, bend.angle < 0.0 ? -1.0 : 1.0, at(b), at(b + 1)});
    }
    stroke.scene.stop.left = stroke.bends.front().left;
    stroke.scene.stop.right = stroke.bends.front().right;
    return stroke;
}

void at_least(const char* name, double value, double least, const char* wrong, const char* or_else) {
    if (!(value >= least))
        throw OutOfRange(name, tool::mm(value) + " " + wrong, "give at least " + tool::mm(least) + or_else);
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
