#include "scenes/documents/report/shown_job.h"

#include <cmath>

#include "scenes/documents/tables/job_tables.h"
#include "scenes/documents/tables/tool_words.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

using picture::ShownJob;
using picture::ShownStroke;

std::string as_sentence(const std::string& words) {
    return capital(words) + (words.empty() || words.back() == '.' ? "" : ".");
}

std::vector<picture::ShownFinding> shown_findings(const files::Case& c, const job::Findings& findings) {
    std::vector<picture::ShownFinding> shown;
    for (const job::Findings& group : job::alike(c, job::by_severity(findings))) {
        const Severity severity = group.front().severity;
        shown.push_back({severity, job::heading_of(severity), as_sentence(job::sentence(c, group))});
    }
    return shown;
}

// ---- a stroke

// Angles as the strip lies, which are the drawing's with the other sign where it lies face down.
std::vector<picture::BendMark> bends_of(const files::Case& c, const job::Blank& blank,
                                        const std::vector<int>& bends, const job::StepResult& result) {
    std::vector<picture::BendMark> marks;
    const double seen = result.stroke.free.face_down ? -1.0 : 1.0;
    for (const int b : bends) {
        picture::BendMark mark;
        mark.name = c.part.bends[b].name;
        mark.blank_position = blank.bend_line[b];
        // To the middles of the flats beside it, where the numbers of results.json are taken.
        mark.reach = blank.bend_line[b] - blank.flat_middle(b);
        mark.reach_after = blank.flat_middle(b + 1) - blank.bend_line[b];
        mark.drawing = seen * c.part.bends[b].angle;
        for (const job::BendResult& r : result.bends)
            if (r.bend == b) mark.loaded = seen * r.loaded, mark.free = seen * r.free;
        marks.push_back(mark);
    }
    return marks;
}

// Empty for a hit that only the way between two states shows.
std::vector<std::pair<picture::Place, double>> state_by_state(const job::StepResult& step,
                                                              const job::Interference& f) {
    std::vector<std::pair<picture::Place, double>> found;
    for (int i = f.first_state; i <= f.last_state && i < static_cast<int>(step.clearance.size()); ++i) {
        const clearance::Closest& there = step.clearance[i];
        if (there.distance >= 0.0 || there.tool != f.deepest.tool) return {};
        found.emplace_back(there.at, -there.distance);
    }
    return found;
}

std::vector<picture::ShownHit> hits_of(const files::Case& c, const job::StepResult& step, int index) {
    std::vector<picture::ShownHit> hits;
    for (const job::Interference& f : step.interferences)
        hits.push_back(
            {{f.deepest.at, -f.deepest.distance,
              std::string("strip and ") + tool::role_word(step.stroke.recording.tools[f.deepest.tool].role)},
             f.first_state,
             f.last_state,
             state_by_state(step, f),
             job::finding_words(c, job::finding_of(step, index, f))});
    return hits;
}

std::vector<picture::ShownTool> tools_of(const files::Case& c, const files::Step& step) {
    std::vector<picture::ShownTool> tools;
    const auto add = [&](const char* role, int k, const std::string& set) {
        const files::Tool& tool = c.tools[k];
        tools.push_back({role, tool.name, set, kind_name(tool) + ", " + figures_words(tool)});
    };
    add("punch", step.punch, "");
    add("die", step.die,
        files::face_count(c.tools[step.die]) > 1 ? words(", face %d up", step.die_face) : "");
    if (step.pad) add("pad", *step.pad, "");
    if (step.clamp)
        add("clamp", *step.clamp, step.clamp_on == files::ClampOn::ram ? ", on the ram" : ", in the frame");
    return tools;
}

std::string goal_of(const files::Case& c, const files::Step& step) {
    const files::Bend& bend = c.part.bends[step.bends.front()];
    switch (step.stop) {
        case files::StopKind::drawing_angle:
            return words("Target: '%s' at the drawing's %.1f\u00b0 after release.", bend.name.c_str(),
                         std::abs(bend.angle) / degree);
        case files::StopKind::free_angle:
            return words("Target: '%s' at %.1f\u00b0 after release.", bend.name.c_str(),
                         step.stop_value / degree);
        case files::StopKind::travel:
            return "The stop is set by travel.";
        case files::StopKind::force:
            return words("The stop is set by force: %.2f kN.", step.stop_value);
        case files::StopKind::gap:
            return words("Target: %.2f mm between the faces of the hem.", step.stop_value);
    }
    return "";
}

// What press and tools bear of a step, on the strip's width: those alone that the case knows.
std::vector<picture::ForceLimit> limits_of(const files::Case& c, const files::Step& step) {
    std::vector<picture::ForceLimit> limits;
    if (c.press && c.press->force > 0.0) limits.push_back({"Rated force of the press", c.press->force});
    if (c.press && c.press->line_load)
        limits.push_back({"Rated load of the tool holders", *c.press->line_load * c.width / 1000.0});
    for (const int k : step.tools())
        if (c.tools[k].make.rating)
            limits.push_back(
                {"Rating of '" + c.tools[k].name + "'", *c.tools[k].make.rating * c.width / 1000.0});
    return limits;
}

// What was found about this stroke, and the bends that it finishes.
void add_findings(const files::Case& c, const job::Findings& findings, int index, ShownStroke& shown) {
    for (const Finding& f : findings) {
        const bool of_step = f.place.of == On::step;
        if (f.place.step != index || !(of_step || f.place.of == On::bend)) continue;
        if (f.rule == Rule::not_compared) continue;  // for who plans, not for who presses
        (f.severity == Severity::note ? shown.remarks : shown.findings)
            .push_back(as_sentence(of_step ? job::finding_words(c, f) : job::sentence(c, f)));
    }
}

ShownStroke shown_stroke(const files::Case& c, const job::JobResult& job, int index) {
    const files::Step& step = c.steps[index];
    const job::StepResult& result = job.steps[index];
    ShownStroke shown;
    shown.name = step.name;
    shown.recording = &result.stroke.recording;
    shown.bends = bends_of(c, job.blank, step.bends, result);
    shown.hits = hits_of(c, result, index);
    shown.clearance = result.clearance;
    shown.number = index + 1;
    shown.way_in = result.way_in, shown.way_off = result.way_off;
    if (index > 0) shown.turning = turning_between(c.steps[index - 1], step);
    shown.upper_face_up = step.face == files::Face::up;
    shown.left_end_left = step.first == files::First::left;
    shown.tools = tools_of(c, step);
    if (result.gauge > 0.0) shown.gauge = result.gauge;
    shown.stop_travel = result.stroke.stop_travel;
    shown.stop_force = result.stroke.stop_force, shown.peak_force = result.stroke.peak_force;
    shown.goal = goal_of(c, step);
    shown.limits = limits_of(c, step);
    add_findings(c, job.findings, index, shown);
    return shown;
}

// ---- the part

// Of each flat the second of three places, of each bend the third of five.
picture::ShownPart shown_part(const files::Case& c) {
    picture::ShownPart part;
    part.line = job::drawing_line(c);
    part.flats = c.part.flats;
    std::vector<std::vector<picture::Point>> flats(c.part.flats.size()), bends(c.part.bends.size());
    for (const job::ProfilePoint& p : job::drawing_points(c))
        (p.flat >= 0 ? flats[p.flat] : bends[p.bend]).push_back(p.drawn);
    for (const std::vector<picture::Point>& of_flat : flats) part.flat_middle.push_back(of_flat.at(1));
    for (const std::vector<picture::Point>& of_bend : bends) part.bend_middle.push_back(of_bend.at(2));
    return part;
}

std::vector<picture::BendLine> bend_lines(const files::Case& c, const job::JobResult& job) {
    std::vector<picture::BendLine> lines;
    for (std::size_t b = 0; b < c.part.bends.size(); ++b) {
        const files::Bend& bend = c.part.bends[b];
        lines.push_back({bend.name, job.blank.bend_line[b], bend.angle, bend.inside_radius, {}});
        if (!bend.tolerance.reference) lines.back().allowed = job::allowed_angle(c, static_cast<int>(b));
        if (!job.spread.empty()) lines.back().spread = job.spread[b].whole();
        if (!job.finished_angle.empty()) lines.back().made = job.finished_angle[b];
    }
    return lines;
}

std::string blank_sentence(const files::Case& c, const job::JobResult& job) {
    return words("Blank %.2f mm long, cut with its length %s the rolling direction", job.blank.length,
                 c.rolling == files::Rolling::lengthwise ? "along" : "across") +
           (job.mass_g > 0.0 ? words("; %.1f g", job.mass_g) : "") + ".";
}

}  // namespace

picture::Turning turning_between(const files::Step& before, const files::Step& step) {
    const bool over = before.face != step.face, end = before.first != step.first;
    if (over && end) return picture::Turning::both;
    return over ? picture::Turning::over : end ? picture::Turning::end_for_end : picture::Turning::none;
}

ShownJob shown_job(const files::Case& c, const job::JobResult& job, const std::vector<int>& steps) {
    ShownJob shown;
    shown.title = c.title;
    shown.material = c.material.title;
    shown.thickness = c.thickness, shown.strip_width = c.width;
    shown.blank_length = job.blank.length;
    shown.blank = blank_sentence(c, job);
    shown.bends = bend_lines(c, job);
    shown.part = shown_part(c);
    if (c.press) shown.press_force = c.press->force;
    for (const int step : steps) shown.strokes.push_back(shown_stroke(c, job, step));
    shown.stroke_count = static_cast<int>(c.steps.size());
    if (!job.finished_angle.empty()) shown.finished = &job.steps.back().stroke.recording;
    shown.verdict = job::verdict_words(job), shown.feasible = job.feasible();
    shown.findings = shown_findings(c, job.findings);
    return shown;
}

ShownJob shown_job(const files::Case& c, const job::JobResult& job) {
    std::vector<int> solved;
    for (int i = 0; i < static_cast<int>(job.steps.size()); ++i)
        if (job.steps[i].stroke.solved()) solved.push_back(i);
    return shown_job(c, job, solved);
}

}  // namespace overbend::documents
