#include "scenes/job/run/flat_pattern.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "scenes/job/run/fitted_blank.h"
#include "scenes/job/run/job_rules.h"
#include "scenes/job/run/legs.h"
#include "sim/plan/bend_allowance.h"
#include "sim/plan/shop_rules.h"

namespace overbend::job {

namespace {

// What the corner of a bend is along the mid-line as drawn, both sides of it.
double drawn_corner(const files::Case& c, const files::Bend& bend) {
    const double radius = bend.inside_radius + 0.5 * c.thickness;
    return 2.0 * (is_doubled(bend) ? radius : radius * std::tan(0.5 * std::abs(bend.angle)));
}

// The same as made, from flat to flat, and the blank between the same places.
double mechanics_allowance(const files::Case& c, const Blank& blank, const strip::StripState& s, int b) {
    const FlatLine left = flat_line(blank, s, b), right = flat_line(blank, s, b + 1);
    const Eigen::Vector2d back = -right.along;
    double made = 0.0;
    if (is_doubled(c.part.bends[b])) {
        made = (furthest(blank, s, b, left.along) - left.at).dot(left.along) +
               (furthest(blank, s, b, back) - right.at).dot(back);
    } else {
        const Eigen::Vector2d corner = crossing(left, right);
        made = (corner - left.at).dot(left.along) + (corner - right.at).dot(back);
    }
    const double flat_to_flat = blank.flat_middle(b + 1) - blank.flat_middle(b);
    return drawn_corner(c, c.part.bends[b]) - (made - flat_to_flat);
}

// The bend as it was shaped last.
const BendResult* last_made(const JobResult& job, int b) {
    const BendResult* found = nullptr;
    for (const StepResult& step : job.steps)
        for (const BendResult& made : step.bends)
            if (made.bend == b) found = &made;
    return found;
}

FlatBend flat_bend(const files::Case& c, const FlatPattern& pattern, int b) {
    const files::Bend& bend = c.part.bends[b];
    const double angle = std::abs(bend.angle);
    FlatBend flat;
    flat.bend = b;
    flat.at = pattern.blank.bend_line[b];
    flat.half_arc = pattern.blank.half_arc[b];
    flat.din = plan::din_allowance(std::max(bend.inside_radius, 0.05 * c.thickness), c.thickness, angle);
    flat.handbook = plan::handbook_allowance(bend.inside_radius, c.thickness, angle, c.material.hardness);
    if (!pattern.simulated) return flat;
    const strip::StripState s = as_drawn(pattern.job.steps.back().stroke.free);
    flat.mechanics = mechanics_allowance(c, pattern.blank, s, b);
    const BendResult* made = last_made(pattern.job, b);
    flat.made_radius = made->shape_free.inside_radius;
    // Constant volume: what is thinner is longer.
    flat.mid_stretch = c.thickness / made->shape_free.thickness - 1.0;
    return flat;
}

FlatCutout flat_cutout(const files::Case& c, const Blank& blank, const files::Cutout& cutout) {
    FlatCutout found;
    double nearest = 1e9;
    for (int b = 0; b < static_cast<int>(c.part.bends.size()); ++b) {
        const double distance = edge_to_bend(cutout, blank, b);
        const double least = plan::least_hole_distance(c.part.bends[b].inside_radius, c.thickness);
        if (distance - least >= nearest) continue;
        nearest = distance - least;
        found = {b, distance, least};
    }
    return found;
}

BendLines lines_given(const files::Case& c) {
    return c.bend_lines.empty() ? BendLines::by_rule : BendLines::of_the_case;
}

void run_twice(const files::Case& c, const ProcessOptions& options, FlatPattern& pattern) {
    pattern.job = run_process(c, options);
    pattern.blank = pattern.job.blank;
    if (!pattern.job.solved) return;
    pattern.job = run_process(with_blank(c, pattern.job.fitted), options);
    pattern.blank = pattern.job.blank;
    pattern.simulated = pattern.job.solved;
    pattern.lines = BendLines::fitted;
}

// All that follows from the blank and the job.
void lay_out(const files::Case& c, FlatPattern& pattern) {
    pattern.mass_g = blank_mass(c, pattern.blank);
    for (int b = 0; b < static_cast<int>(c.part.bends.size()); ++b)
        pattern.bends.push_back(flat_bend(c, pattern, b));
    for (const files::Cutout& cutout : c.cutouts)
        pattern.cutouts.push_back(flat_cutout(c, pattern.blank, cutout));
    for (const double flat : c.part.flats) pattern.din += flat;
    pattern.handbook = pattern.din;
    for (const FlatBend& bend : pattern.bends) pattern.din += bend.din, pattern.handbook += bend.handbook;
    if (pattern.simulated) pattern.mechanics = pattern.job.fitted.length;
    pattern.rules = job_rules(c, pattern.blank, pattern.job.steps);
}

}  // namespace

files::Case with_blank(files::Case c, const Blank& blank) {
    c.blank_length = blank.length;
    c.bend_lines = blank.bend_line;
    return c;
}

FlatPattern flat_pattern(const files::Case& c, const ProcessOptions& options) {
    FlatPattern pattern;
    pattern.blank = make_blank(c);
    pattern.lines = lines_given(c);
    if (!c.steps.empty()) run_twice(c, options, pattern);
    lay_out(c, pattern);
    return pattern;
}

FlatPattern pattern_of(const files::Case& c, JobResult job) {
    FlatPattern pattern;
    pattern.job = std::move(job);
    pattern.blank = pattern.job.blank;
    pattern.simulated = pattern.job.solved;
    pattern.lines = lines_given(c);
    lay_out(c, pattern);
    return pattern;
}

}  // namespace overbend::job
