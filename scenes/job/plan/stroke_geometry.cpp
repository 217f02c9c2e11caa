#include "scenes/job/plan/stroke_geometry.h"

#include <algorithm>
#include <cmath>

#include "scenes/files/case/work.h"
#include "sim/material/layer_law.h"
#include "sim/plan/springback.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

constexpr double right_angle = 0.5 * pi;

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
    const files::WorkKind& work = files::work_of(c.tools[step.punch]);
    return work.set_path && &work == &files::work_of(c.tools[step.die]) && (!work.needs_clamp || step.clamp);
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
    if (const auto* foot = files::shape_of<tool::ChannelPunch>(c.tools[step.punch]))
        return std::max(path.free, std::min(loaded, right_angle + foot->side_relief));
    return loaded;
}

}  // namespace

plan::StrokePath stroke_path(const files::Case& c, const Blank& blank, const files::Step& step) {
    plan::StrokePath path;
    path.thickness = c.thickness;
    path.free = path.loaded = std::abs(c.part.bends[step.bends.front()].angle);
    path.half_allowance = blank.half_arc[step.bends.front()];
    const files::WorkKind& work = files::work_of(c.tools[step.punch]);
    if (work.set_path) work.set_path(c, blank, step, path);
    path.loaded = loaded_by_rule(c, blank, step, path);
    return path;
}

plan::StrokePath path_between(const files::Case& c, const Blank& blank, const std::vector<int>& bends,
                              const files::Tool& punch, const files::Tool& die) {
    files::Case with = c;
    with.tools = {punch, die};
    files::Step step;
    step.bends = bends;
    step.die = 1;
    return stroke_path(with, blank, step);
}

}  // namespace overbend::job
