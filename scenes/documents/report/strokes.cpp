// The strokes on a job's page: what a player shows, and what the shop sets and may expect.

#include <algorithm>
#include <cmath>

#include "render/picture/stage.h"
#include "render/report/still.h"
#include "scenes/documents/report/page_parts.h"
#include "scenes/documents/report/story_data.h"
#include "scenes/documents/report/tool_words.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

using report::StrokeShow;

std::vector<std::string> bend_names(const files::Case& c, const files::Step& step) {
    std::vector<std::string> names;
    for (const int b : step.bends) names.push_back(c.part.bends[b].name);
    return names;
}

// Angles of each bend, in words: "lip 93.6°".
std::string angles_words(const files::Case& c, const job::StepResult& result,
                         double job::BendResult::*angle) {
    std::vector<std::string> all;
    for (const job::BendResult& b : result.bends)
        all.push_back((result.bends.size() > 1 ? c.part.bends[b.bend].name + " " : "") +
                      in_degrees(std::abs(b.*angle)));
    return named(all);
}

std::string springback_words(const files::Case& c, const job::StepResult& result) {
    std::vector<std::string> all;
    for (const job::BendResult& b : result.bends)
        all.push_back((result.bends.size() > 1 ? c.part.bends[b.bend].name + " " : "") +
                      in_degrees(b.springback()));
    return named(all);
}

report::PassageWords passage_words(const files::Case& c, const files::Step& step,
                                   const job::StepResult& result) {
    const std::string bends = named(bend_names(c, step)), punch = "'" + c.tools[step.punch].name + "'";
    const bool two = step.bends.size() > 1;
    const double force = result.stroke.stop_force * c.width / 1000.0;
    report::PassageWords w;
    w.placed = "the strip lies on " + die_words(c, step) +
               (two ? ", the bend lines of " : ", the bend line of ") + bends + " under the punch" +
               (result.gauge > 0.0 ? ", against the gauge " + figure(result.gauge, 2) + " mm away." : ".");
    w.approach = "the punch " + punch + " comes down to the strip.";
    w.press = "the punch goes down and bends " + bends + ".";
    w.dwell = "the punch holds the strip at " + figure(result.stroke.stop_travel, 2) + " mm of travel with " +
              figure(force, 2) + " kN; " + angles_words(c, result, &job::BendResult::loaded) + " under load.";
    w.retract = "the punch goes up and the strip springs back; dashed: its shape under load.";
    w.free = "the tools no longer touch the strip; " + angles_words(c, result, &job::BendResult::free) +
             " free, springback " + springback_words(c, result) + ".";
    return w;
}

std::string turned_words(const files::Case& c, int index) {
    const files::Step& step = c.steps[index];
    const std::string lies = std::string("the blank's upper face points ") +
                             (step.face == files::Face::up ? "up" : "down") + ", its " +
                             (step.first == files::First::left ? "left" : "right") + " end on the left";
    if (index == 0) return "The blank is placed: " + lies + ".";
    const files::Step& before = c.steps[index - 1];
    const bool over = before.face != step.face, end = before.first != step.first;
    if (!over && !end) return "The strip is not turned: " + lies + ".";
    return std::string("The strip is turned ") +
           (over ? (end ? "over and end for end" : "over") : "end for end") + ": " + lies + ".";
}

std::string clearance_words(const job::StepResult& result) {
    if (result.least.tool < 0) return "nothing near outside the forming zone";
    const tool::RigidTool& t = result.stroke.recording.tools[result.least.tool];
    const std::string what =
        std::string(tool::role_word(t.role)) + (t.name == tool::role_word(t.role) ? "" : " '" + t.name + "'");
    if (result.least.distance < 0.0)
        return "interference with the " + what + ", " + figure(-result.least.distance, 2) + " mm deep";
    return figure(result.least.distance, 2) + " mm, to the " + what + " at " +
           figure(result.least.travel, 2) + " mm of travel";
}

std::vector<report::Term> facts(const files::Case& c, const files::Step& step,
                                const job::StepResult& result) {
    const stroke::StrokeResult& s = result.stroke;
    const std::string width = words("%.1f", s.peak_force);
    std::vector<report::Term> terms = {
        {"Punch", "'" + c.tools[step.punch].name + "': " + figures_words(c.tools[step.punch])},
        {"Die", die_words(c, step)},
        {"Stop", figure(s.stop_travel, 3) + " mm of travel from first touch, for " + stop_words(c, step)},
        {"Angle under load", angles_words(c, result, &job::BendResult::loaded)},
        {"Angle free",
         angles_words(c, result, &job::BendResult::free) + ", springback " + springback_words(c, result)},
        {"Peak force",
         figure(s.peak_force * c.width / 1000.0, 2) + " kN, " + width + " N per mm of strip width"},
        {"Minimum clearance", clearance_words(result)}};
    if (step.pad)
        terms.insert(terms.begin() + 2,
                     {"Pad", "'" + c.tools[*step.pad].name + "': " + figures_words(c.tools[*step.pad])});
    if (step.clamp)
        terms.insert(terms.begin() + 2, {"Clamp", "'" + c.tools[*step.clamp].name +
                                                      "': " + figures_words(c.tools[*step.clamp])});
    if (result.gauge > 0.0)
        terms.insert(terms.begin() + 2, {"Gauge", figure(result.gauge, 2) + " mm from the punch's axis"});
    return terms;
}

StrokeShow show_of(const files::Case& c, const job::JobResult& job, int index) {
    const files::Step& step = c.steps[index];
    const job::StepResult& result = job.steps[index];
    StrokeShow show;
    show.name = result.name, show.number = index + 1, show.recording = &result.stroke.recording;
    show.strip_width = c.width;
    const double seen = result.stroke.free.face_down ? -1.0 : 1.0;  // angles as the strip lies, not as drawn
    for (const job::BendResult& b : result.bends) {
        picture::BendMark mark;
        mark.name = c.part.bends[b.bend].name;
        mark.blank_position = job.blank.bend_line[b.bend];
        // To the middles of the flats beside it, where the numbers of results.json are taken.
        mark.reach = job.blank.bend_line[b.bend] - job.blank.flat_middle(b.bend);
        mark.reach_after = job.blank.flat_middle(b.bend + 1) - job.blank.bend_line[b.bend];
        mark.loaded = seen * b.loaded, mark.free = seen * b.free;
        show.bends.push_back(mark);
    }
    for (std::size_t b = 0; b < c.part.bends.size(); ++b)
        show.lines.push_back({c.part.bends[b].name, job.blank.bend_line[b]});
    for (const job::Interference& f : result.interferences)
        show.hits.push_back({f.first_state, f.last_state, f.deepest.at, -f.deepest.distance, f.words});
    show.clearance = result.clearance;
    show.words = passage_words(c, step, result);
    return show;
}

report::ForceCurve curve_of(const files::Case& c, const files::Step& step, const job::StepResult& result) {
    report::ForceCurve curve;
    curve.limits = force_limits(c, step);
    for (const stroke::CurvePoint& p : result.stroke.curve) {
        curve.points.push_back({p.travel, p.force * c.width});
        if (p.travel >= curve.points[curve.turn].travel) curve.turn = curve.points.size() - 1;
    }
    curve.label = "Force over travel of " + result.name + ": up to " +
                  figure(result.stroke.peak_force * c.width / 1000.0, 2) + " kN, stop at " +
                  figure(result.stroke.stop_travel, 2) + " mm";
    return curve;
}

report::PageFigure still_of(const StrokeShow& show) {
    const std::string label = words("Stroke %d, ", show.number) + show.name + ", under load";
    return {report::still_svg(show, report::loaded_state(*show.recording), label),
            "Under load: " + show.words.dwell};
}

}  // namespace

void add_strokes(const files::Case& c, const job::JobResult& job, report::Page& page) {
    std::vector<const stroke::Recording*> recordings;
    for (const job::StepResult& step : job.steps) recordings.push_back(&step.stroke.recording);
    const double stress = picture::colour_limit(recordings, picture::Colouring::hoop_stress);
    const double strain = picture::colour_limit(recordings, picture::Colouring::plastic_strain);
    for (int i = 0; i < static_cast<int>(job.steps.size()); ++i) {
        const job::StepResult& result = job.steps[i];
        report::PageStroke stroke;
        stroke.show = show_of(c, job, i);
        stroke.show.stress_limit = stress, stroke.show.strain_limit = strain;
        stroke.lead = turned_words(c, i) + " " + (c.steps[i].bends.size() > 1 ? "Bends " : "Bend ") +
                      named(bend_names(c, c.steps[i])) + (c.steps[i].bends.size() > 1 ? " are" : " is") +
                      " made.";
        stroke.facts = facts(c, c.steps[i], result);
        stroke.curve = curve_of(c, c.steps[i], result);
        stroke.still = still_of(stroke.show);
        for (const std::string& w : result.warnings) stroke.remarks.push_back("Warning: " + w);
        for (const std::string& w : result.remarks) stroke.remarks.push_back(w);
        page.strokes.push_back(std::move(stroke));
    }
}

}  // namespace overbend::documents
