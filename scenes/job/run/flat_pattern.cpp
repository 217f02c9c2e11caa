#include "scenes/job/run/flat_pattern.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "scenes/job/run/fitted_blank.h"
#include "scenes/job/run/legs.h"

namespace overbend::job {

namespace {

// What the corner of a bend is along the mid-line as made, from flat to flat, and the blank between the same
// places.
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
    return 2.0 * drawn_half(c, c.part.bends[b]) - (made - flat_to_flat);
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
    FlatBend flat;
    flat.bend = b;
    flat.at = pattern.blank.bend_line[b];
    flat.half_arc = pattern.blank.half_arc[b];
    flat.din = din_allowance(c, bend);
    flat.handbook = handbook_allowance(c, bend);
    if (!pattern.simulated) return flat;
    const strip::StripState s = as_drawn(pattern.job.steps.back().stroke.free);
    flat.mechanics = mechanics_allowance(c, pattern.blank, s, b);
    const BendResult* made = last_made(pattern.job, b);
    flat.made_radius = made->shape_free.inside_radius;
    // Constant volume: what is thinner is longer.
    flat.mid_stretch = c.thickness / made->shape_free.thickness - 1.0;
    return flat;
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
        pattern.cutouts.push_back({nearest_bend(c, pattern.blank, cutout)});
    pattern.din = developed_length(c, din_allowance);
    pattern.handbook = developed_length(c, handbook_allowance);
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
