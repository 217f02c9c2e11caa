#include "scenes/job/plan/stroke_geometry.h"

#include <algorithm>
#include <cmath>
#include <variant>

#include "sim/material/layer_law.h"
#include "sim/plan/springback.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

constexpr double right_angle = 0.5 * pi;

// A strip is bent to the drawing's radius, or wider round a nose that is larger.
double made_radius(const files::Case& c, const files::Step& step, double nose) {
    return std::max(nose, c.part.bends[step.bends.front()].inside_radius);
}

void set_vee(const files::Case& c, const files::Step& step, plan::StrokePath& path) {
    path.kind = plan::StrokeKind::vee;
    path.nose = made_radius(c, step, shape_of<tool::VeePunch>(c, step.punch)->nose_radius);
    if (const auto* vee = shape_of<tool::VeeDie>(c, step.die)) {
        const tool::VeeFace& face = vee->faces[step.die_face - 1];
        path.shoulder = face.shoulder_radius;
        path.shoulder_x = 0.5 * face.die_opening;
        return;
    }
    const auto* open = shape_of<tool::OpenDie>(c, step.die);
    path.shoulder = open->shoulder_radius;
    path.shoulder_x = 0.5 * open->die_opening;
}

void set_channel(const files::Case& c, const files::Step& step, plan::StrokePath& path) {
    const auto* punch = shape_of<tool::ChannelPunch>(c, step.punch);
    const auto* die = shape_of<tool::ChannelDie>(c, step.die);
    path.kind = plan::StrokeKind::channel;
    path.nose = made_radius(c, step, punch->corner_radius);
    path.nose_x = 0.5 * punch->width - punch->corner_radius;
    // a wall bent wider than the foot's corner stands where the drawing has it
    if (path.nose > punch->corner_radius) path.nose_x = 0.5 * c.part.flats[step.bends.back()];
    path.shoulder = die->shoulder_radius;
    path.shoulder_x = 0.5 * die->die_opening + die->shoulder_radius;
    path.lowest = -die->depth + die->floor_crown + c.thickness;
    if (!step.pad) return;
    const files::Pad& pad = std::get<files::Pad>(c.tools[*step.pad].shape);
    path.lowest = std::max(path.lowest, -std::min(pad.spring.solid, die->depth - pad.block.height));
}

void set_offset(const files::Case& c, const Blank& blank, const files::Step& step, plan::StrokePath& path) {
    const auto* punch = shape_of<tool::OffsetPunch>(c, step.punch);
    const auto* die = shape_of<tool::OffsetDie>(c, step.die);
    path.kind = plan::StrokeKind::offset;
    path.nose = punch->nose_radius;
    path.shoulder = die->shoulder_radius;
    path.offset = die->offset;
    path.run = die->offset / std::tan(die->angle);
    path.clearance = punch->clearance;
    path.middle = (blank.bend_line[step.bends.back()] + blank.half_arc[step.bends.back()]) -
                  (blank.bend_line[step.bends.front()] - blank.half_arc[step.bends.front()]);
}

void set_wiping(const files::Case& c, const files::Step& step, plan::StrokePath& path) {
    const auto* punch = shape_of<files::WipingPunch>(c, step.punch);
    path.kind = plan::StrokeKind::wiping;
    path.nose = punch->block.left_radius;
    path.shoulder = shape_of<files::WipingDie>(c, step.die)->block.right_radius;
    path.clearance = punch->clearance;
}

double springback_curvature_of(const files::Case& c, const Blank& blank, int bend) {
    if (!blank.springback_curvature.empty()) return blank.springback_curvature[bend];
    const double hold = material::width_hold(c.width / c.thickness);
    return plan::springback_curvature(c.material, hold, c.thickness, c.part.bends[bend].inside_radius);
}

}  // namespace

Blank planning_blank(const files::Case& c) {
    Blank blank = make_blank(c);
    std::vector<double> springback_curvature;
    for (std::size_t b = 0; b < c.part.bends.size(); ++b) {
        // bends drawn alike spring back alike
        const auto same = std::find_if(
            c.part.bends.begin(), c.part.bends.begin() + static_cast<long>(b),
            [&](const files::Bend& o) { return o.inside_radius == c.part.bends[b].inside_radius; });
        const auto index = same - c.part.bends.begin();
        springback_curvature.push_back(index < static_cast<long>(b)
                                           ? springback_curvature[index]
                                           : springback_curvature_of(c, blank, static_cast<int>(b)));
    }
    blank.springback_curvature = springback_curvature;
    return blank;
}

plan::FoldedPart folded_part(const files::Case& c, const Blank& blank) {
    plan::FoldedPart part;
    part.thickness = c.thickness;
    part.flats = c.part.flats;
    for (std::size_t b = 0; b < c.part.bends.size(); ++b) {
        part.angle.push_back(c.part.bends[b].angle);
        part.radius.push_back(c.part.bends[b].inside_radius + 0.5 * c.thickness);
        part.allowance.push_back(2.0 * blank.half_arc[b]);
    }
    return part;
}

bool has_path(const files::Case& c, const files::Step& step) {
    const bool vee = shape_of<tool::VeePunch>(c, step.punch) &&
                     (shape_of<tool::VeeDie>(c, step.die) || shape_of<tool::OpenDie>(c, step.die));
    const bool channel =
        shape_of<tool::ChannelPunch>(c, step.punch) && shape_of<tool::ChannelDie>(c, step.die);
    const bool offset = shape_of<tool::OffsetPunch>(c, step.punch) && shape_of<tool::OffsetDie>(c, step.die);
    const bool wiping =
        shape_of<files::WipingPunch>(c, step.punch) && shape_of<files::WipingDie>(c, step.die) && step.clamp;
    return vee || channel || offset || wiping;
}

namespace {

// Length of strip that counts with the bend's whole moment when it springs back.
double springing_length(const plan::StrokePath& path, double arc) {
    switch (path.kind) {
        case plan::StrokeKind::vee:
        case plan::StrokeKind::wiping:
            break;
        case plan::StrokeKind::channel:
            return 0.25 *
                   arc;  // over the shoulder the wall is bent back: simulated channels lie from 0.23 to 0.43
        case plan::StrokeKind::offset:
            return arc + path.thickness;  // the moment turns round in the web, beside a short one
    }
    plan::StrokePath closed = path;
    closed.loaded = path.free;
    return 0.5 * arc + plan::arm(closed, 1.0);
}

double loaded_by_rule(const files::Case& c, const Blank& blank, const files::Step& step,
                      const plan::StrokePath& path) {
    const int bend = step.bends.front();
    const double arc = (c.part.bends[bend].inside_radius + 0.5 * c.thickness) * path.free;
    const double loaded = path.free + springback_curvature_of(c, blank, bend) * springing_length(path, arc);
    // a wall goes no further than the foot's side
    if (const auto* foot = shape_of<tool::ChannelPunch>(c, step.punch))
        return std::max(path.free, std::min(loaded, right_angle + foot->side_relief));
    return loaded;
}

}  // namespace

plan::StrokePath stroke_path(const files::Case& c, const Blank& blank, const files::Step& step) {
    plan::StrokePath path;
    path.thickness = c.thickness;
    path.free = path.loaded = std::abs(c.part.bends[step.bends.front()].angle);
    path.half_allowance = blank.half_arc[step.bends.front()];
    if (shape_of<tool::VeePunch>(c, step.punch)) set_vee(c, step, path);
    if (shape_of<tool::ChannelPunch>(c, step.punch)) set_channel(c, step, path);
    if (shape_of<tool::OffsetPunch>(c, step.punch)) set_offset(c, blank, step, path);
    if (shape_of<files::WipingPunch>(c, step.punch)) set_wiping(c, step, path);
    path.loaded = loaded_by_rule(c, blank, step, path);
    return path;
}

}  // namespace overbend::job
