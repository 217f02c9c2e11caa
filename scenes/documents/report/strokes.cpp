// The strokes on a job's page: what a player shows, and what the shop sets and may expect.

#include <cmath>

#include "render/picture/turning.h"
#include "scenes/documents/report/page_parts.h"
#include "scenes/documents/report/shown_job.h"
#include "scenes/documents/tables/tool_words.h"
#include "scenes/files/case/nearest_key.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

std::string bend_names(const picture::ShownStroke& stroke) {
    std::vector<std::string> names;
    for (const picture::BendMark& bend : stroke.bends) names.push_back(bend.name);
    return files::listed(names, " and ");
}

// An angle of each bend, in words: "lip 93.6°".
template <class Angle>
std::string each_angle(const files::Case& c, const job::StepResult& result, const Angle& angle) {
    std::vector<std::string> all;
    for (const job::BendResult& b : result.bends)
        all.push_back((result.bends.size() > 1 ? c.part.bends[b.bend].name + " " : "") +
                      in_degrees(angle(b)));
    return files::listed(all, " and ");
}

std::string loaded_words(const files::Case& c, const job::StepResult& result) {
    return each_angle(c, result, [](const job::BendResult& b) { return std::abs(b.loaded); });
}

// "90.0°, springback 1.6°", with what stands between.
std::string free_words(const files::Case& c, const job::StepResult& result, const char* between) {
    return each_angle(c, result, [](const job::BendResult& b) { return std::abs(b.free); }) + between +
           each_angle(c, result, [](const job::BendResult& b) { return b.springback(); });
}

report::PassageWords passage_words(const files::Case& c, const files::Step& step,
                                   const picture::ShownStroke& shown, const job::StepResult& result) {
    const std::string bends = bend_names(shown), punch = "'" + c.tools[step.punch].name + "'";
    const bool two = step.bends.size() > 1;
    const double force = result.stroke.stop_force * c.width / 1000.0;
    report::PassageWords w;
    w.placed = "the strip lies on " + die_words(c, step) +
               (two ? ", the bend lines of " : ", the bend line of ") + bends + " under the punch" +
               (result.gauge > 0.0 ? ", against the gauge " + figure(result.gauge, 2) + " mm away." : ".");
    w.approach = "the punch " + punch + " comes down to the strip.";
    w.press = "the punch goes down and bends " + bends + ".";
    w.dwell = "the punch holds the strip at " + figure(result.stroke.stop_travel, 2) + " mm of travel with " +
              figure(force, 2) + " kN; " + loaded_words(c, result) + " under load.";
    w.retract = "the punch goes up and the strip springs back; dashed: its shape under load.";
    w.free = "the tools no longer touch the strip; " + free_words(c, result, " free, springback ") + ".";
    return w;
}

std::string turned_words(const picture::ShownStroke& stroke) {
    const std::string lies = std::string("the blank's upper face points ") +
                             (stroke.upper_face_up ? "up" : "down") + ", its " +
                             (stroke.left_end_left ? "left" : "right") + " end on the left.";
    if (stroke.number == 1) return "The blank is placed: " + lies;
    const std::string done = picture::turning_words(stroke.turning).done;
    return (done.empty() ? "The strip is not turned: " : "The strip is " + done + ": ") + lies;
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
    const auto told = [&](int tool) {
        return "'" + c.tools[tool].name + "': " + figures_words(c.tools[tool]);
    };
    std::vector<report::Term> terms = {
        {"Punch", told(step.punch)},
        {"Die", die_words(c, step)},
        {"Stop", figure(s.stop_travel, 3) + " mm of travel from first touch, for " + stop_words(c, step)},
        {"Angle under load", loaded_words(c, result)},
        {"Angle free", free_words(c, result, ", springback ")},
        {"Peak force",
         figure(s.peak_force * c.width / 1000.0, 2) + " kN, " + width + " N per mm of strip width"},
        {"Minimum clearance", clearance_words(result)}};
    if (step.pad) terms.insert(terms.begin() + 2, {"Pad", told(*step.pad)});
    if (step.clamp) terms.insert(terms.begin() + 2, {"Clamp", told(*step.clamp)});
    if (result.gauge > 0.0)
        terms.insert(terms.begin() + 2, {"Gauge", figure(result.gauge, 2) + " mm from the punch's axis"});
    return terms;
}

// Down to the farthest travel, and what follows is the way back.
chart::ForceTravel curve_of(const picture::ShownStroke& stroke, const job::StepResult& result, double width) {
    std::vector<chart::ForcePoint> points;
    std::size_t turn = 0;
    for (const stroke::CurvePoint& p : result.stroke.curve) {
        points.push_back({p.travel, p.force * width / 1000.0});
        if (p.travel >= points[turn].travel) turn = points.size() - 1;
    }
    chart::ForceTravel chart;
    if (!points.empty()) {
        chart.loading.assign(points.begin(), points.begin() + turn + 1);
        chart.going_back.assign(points.begin() + turn, points.end());
    }
    chart.limits = stroke.limits;
    chart.title = "Force over travel of " + stroke.name + ": up to " +
                  figure(stroke.peak_force * width / 1000.0, 2) + " kN, stop at " +
                  figure(stroke.stop_travel, 2) + " mm";
    return chart;
}

}  // namespace

void add_strokes(const files::Case& c, const job::JobResult& job, report::Page& page) {
    page.job = shown_job(c, job);
    for (int i = 0; i < static_cast<int>(job.steps.size()); ++i) {
        const job::StepResult& result = job.steps[i];
        const picture::ShownStroke& shown = page.job.strokes[i];
        const bool two = shown.bends.size() > 1;
        report::PageStroke stroke;
        stroke.lead = turned_words(shown) + (two ? " Bends " : " Bend ") + bend_names(shown) +
                      (two ? " are" : " is") + " made.";
        stroke.told = passage_words(c, c.steps[i], shown, result);
        stroke.facts = facts(c, c.steps[i], result);
        stroke.curve = curve_of(shown, result, c.width);
        for (const Finding& f : job::of_step(job.findings, i))
            if (f.severity != Severity::stops)
                stroke.remarks.push_back((f.severity == Severity::caution ? "Caution: " : "") +
                                         job::finding_words(c, f));
        page.strokes.push_back(std::move(stroke));
    }
}

}  // namespace overbend::documents
