#include "scenes/job/run/flat_pattern.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "scenes/job/run/fitted_blank.h"
#include "scenes/job/run/legs.h"

namespace overbend::job {

namespace {

constexpr double same_length = 0.05;  // mm, that the blank of a case may be off the fitted one

// The blank that goes into a bend as drawn: what of the drawing's corner the made corner does not take beyond
// the blank between the same places.
double mechanics_allowance(const files::Case& c, const Blank& blank, const BentStrip& finished, int b) {
    const double flat_to_flat = blank.flat_middle(b + 1) - blank.flat_middle(b);
    return drawn_corner(c, b) - (made_corner(c, blank, finished, b) - flat_to_flat);
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
    const BentStrip finished = bent_strip(pattern.job.steps.back().stroke.free);
    flat.mechanics = mechanics_allowance(c, pattern.blank, finished, b);
    const BendResult* made = last_made(pattern.job, b);
    flat.made_radius = made->shape_free.inside_radius;
    // Constant volume: what is thinner is longer.
    flat.mid_stretch = c.thickness / made->shape_free.thickness - 1.0;
    return flat;
}

BendLines lines_of(const files::Case& c, bool simulated) {
    if (!c.bend_lines.empty()) return BendLines::of_the_case;
    return simulated ? BendLines::fitted : BendLines::by_rule;
}

double developed_mechanics(const files::Case& c, const FlatPattern& pattern) {
    double length = 0.0;
    for (const double flat : c.part.flats) length += flat;
    for (const FlatBend& b : pattern.bends) length += b.mechanics;
    return length;
}

// A blank is cut in hundredths; so are its allowances, that they add up to it.
void round_allowances(const files::Case& c, FlatPattern& pattern) {
    const auto hundredth = [](double value) { return std::round(100.0 * value) / 100.0; };
    double left = pattern.blank.length;
    for (const double flat : c.part.flats) left -= flat;
    for (FlatBend& b : pattern.bends) b.mechanics = hundredth(b.mechanics), left -= b.mechanics;
    for (std::size_t i = 0; std::abs(left) > 0.005 && i < pattern.bends.size(); ++i) {
        const double part = hundredth(left / static_cast<double>(pattern.bends.size() - i));
        pattern.bends[i].mechanics += part, left -= part;
    }
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
    pattern.rules = job_rules(c, pattern.blank, pattern.job.steps);
    if (!pattern.simulated) return;
    if (std::abs(developed_mechanics(c, pattern) - pattern.blank.length) < same_length)
        round_allowances(c, pattern);
    pattern.mechanics = developed_mechanics(c, pattern);
}

}  // namespace

files::Case with_blank(files::Case c, const Blank& blank) {
    c.blank_length = blank.length;
    c.bend_lines = blank.bend_line;
    return c;
}

FlatPattern flat_pattern(const files::Case& c, const ProcessOptions& options) {
    if (!c.steps.empty()) return pattern_of(c, run_process(c, options));
    JobResult not_run;
    not_run.blank = make_blank(c);
    return pattern_of(c, not_run);
}

FlatPattern pattern_of(const files::Case& c, JobResult job) {
    FlatPattern pattern;
    pattern.job = std::move(job);
    pattern.blank = pattern.job.blank;
    pattern.simulated = pattern.job.solved && !c.steps.empty();
    pattern.lines = lines_of(c, pattern.simulated);
    lay_out(c, pattern);
    return pattern;
}

}  // namespace overbend::job
