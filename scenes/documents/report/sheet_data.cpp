#include "scenes/documents/report/sheet_data.h"

#include <algorithm>
#include <cmath>

#include "render/picture/cautions.h"
#include "render/picture/panel.h"
#include "render/picture/strip_shape.h"
#include "scenes/documents/report/tool_words.h"
#include "scenes/job/run/job_rules.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

double in_kN(const files::Case& c, double per_mm) {
    return per_mm * c.width / 1000.0;
}

// "two-way block, face 2 up" for a block with a groove on each of two faces.
std::string die_name(const files::Tool& tool, const files::Step& step) {
    const auto* vee = std::get_if<tool::VeeDie>(&tool.shape);
    const bool two_way = vee != nullptr && vee->faces.size() > 1;
    return two_way ? words("%s, face %d up", tool.name.c_str(), step.die_face) : tool.name;
}

report::SheetTool sheet_tool(const std::string& role, const files::Tool& tool, const std::string& name) {
    return {role, name, kind_name(tool) + ", " + figures_words(tool)};
}

std::vector<report::SheetTool> tools_of(const files::Case& c, const files::Step& step) {
    const files::Tool &punch = c.tools[step.punch], &die = c.tools[step.die];
    std::vector<report::SheetTool> tools = {sheet_tool("punch", punch, punch.name),
                                            sheet_tool("die", die, die_name(die, step))};
    if (step.pad) tools.push_back(sheet_tool("pad", c.tools[*step.pad], c.tools[*step.pad].name));
    if (step.clamp)
        tools.push_back(
            sheet_tool("clamp", c.tools[*step.clamp],
                       c.tools[*step.clamp].name +
                           (step.clamp_on == files::ClampOn::ram ? ", on the ram" : ", in the frame")));
    return tools;
}

// How far right of the punch's axis the placed strip reaches.
double right_end(const stroke::Recording& r) {
    const std::vector<double>& x = r.states.front().x;
    return *std::max_element(x.begin(), x.end());
}

std::vector<std::string> gauge_words(const files::Case& c, const job::Blank& blank, const files::Step& step,
                                     const job::StepResult& result) {
    const stroke::Recording& r = result.stroke.recording;
    const bool gauged = result.gauge > 0.0;
    const double from_axis = gauged ? result.gauge : right_end(r);
    std::vector<std::string> sentences;
    sentences.push_back(
        gauged ? words("%.2f mm from the punch's axis to its face.", from_axis)
               : words("None: the strip's right end lies %.2f mm from the punch's axis.", from_axis));
    const char* from = gauged ? "the gauge's face" : "that end";
    for (const int b : step.bends) {
        const double x = picture::spot_on(r, r.states.front(), blank.bend_line[b]).at.x();
        const std::string axis = std::abs(x) < 0.005 ? "on the punch's axis"
                                                     : words("%.2f mm %s of the punch's axis", std::abs(x),
                                                             x < 0.0 ? "left" : "right");
        sentences.push_back(words("Bend line '%s': %.2f mm from %s, %s.", c.part.bends[b].name.c_str(),
                                  from_axis - x, from, axis.c_str()));
    }
    return sentences;
}

std::string stop_sentence(const files::Case& c, const files::Step& step) {
    const std::string first = "'" + c.part.bends[step.bends.front()].name + "'";
    switch (step.stop) {
        case files::StopKind::drawing_angle:
            return words("Target: %s at the drawing's %.1f\u00b0 after release.", first.c_str(),
                         std::abs(c.part.bends[step.bends.front()].angle) / degree);
        case files::StopKind::free_angle:
            return words("Target: %s at %.1f\u00b0 after release.", first.c_str(), step.stop_value / degree);
        case files::StopKind::travel:
            return "The stop is set by travel.";
        case files::StopKind::force:
            return words("The stop is set by force: %.2f kN.", step.stop_value);
        case files::StopKind::gap:
            return words("Target: %.2f mm between the faces of the hem.", step.stop_value);
    }
    return "";
}

std::string as_sentence(std::string words) {
    if (!words.empty() && words[0] >= 'a' && words[0] <= 'z')
        words[0] = static_cast<char>(words[0] - 'a' + 'A');
    if (!words.empty() && words.back() != '.') words += '.';
    return words;
}

// Shop-rule findings about this stroke or its bends.
void add_rules(const files::Case& c, const job::RuleReport& rules, int index, report::SheetStroke& stroke) {
    const std::vector<int>& bends = c.steps[index].bends;
    for (const plan::RuleFinding& f : rules.findings) {
        const bool of_step = f.place == plan::RulePlace::step && f.index == index;
        const bool of_bend =
            f.place == plan::RulePlace::bend && std::find(bends.begin(), bends.end(), f.index) != bends.end();
        if (of_step || of_bend)
            stroke.findings.push_back(as_sentence(job::place_words(c, f) + ": " + f.words));
    }
}

report::SheetStroke stroke_data(const files::Case& c, const job::JobResult& job, int index) {
    const files::Step& step = c.steps[index];
    const job::StepResult& result = job.steps[index];
    report::SheetStroke stroke;
    stroke.name = step.name;
    stroke.recording = &result.stroke.recording;
    stroke.tools = tools_of(c, step);
    stroke.place = lying_words(step);
    stroke.turning = turning_words(index > 0 ? &c.steps[index - 1] : nullptr, step);
    stroke.gauge = result.gauge > 0.0 ? words("%.2f", result.gauge) : "none";
    if (result.gauge > 0.0) stroke.gauge_at = result.gauge;
    stroke.gauge_words = gauge_words(c, job.blank, step, result);
    stroke.travel = result.stroke.stop_travel;
    stroke.stop_force = in_kN(c, result.stroke.stop_force);
    stroke.stop_words = stop_sentence(c, step);
    stroke.peak = in_kN(c, result.stroke.peak_force);
    stroke.peak_per_m = result.stroke.peak_force;  // N per mm is kN per m
    if (c.press) stroke.press = c.press->force;
    for (const job::BendResult& b : result.bends)
        stroke.angles.push_back({c.part.bends[b.bend].name, b.drawing, b.loaded, b.free});
    if (result.stroke.outcome != stroke::Outcome::reached)
        stroke.findings.push_back(as_sentence(result.stroke.reason));
    const double loaded = picture::loaded_instant(result.stroke.recording);
    for (const job::Interference& f : result.interferences)
        if (f.first_state <= loaded && loaded <= f.last_state)
            stroke.hits.push_back({f.deepest.at, -f.deepest.distance});
    for (const job::Interference& f : result.interferences) stroke.findings.push_back(as_sentence(f.words));
    for (const std::string& w : result.warnings) stroke.findings.push_back(as_sentence(w));
    add_rules(c, job.rules, index, stroke);
    for (const std::string& w : result.remarks) stroke.remarks.push_back(as_sentence(w));
    return stroke;
}

void add_part(const files::Case& c, const job::Blank& blank, report::SheetData& data) {
    data.profile = job::drawing_line(c);
    data.flats = c.part.flats;
    const std::vector<job::ProfilePoint> points = job::drawing_points(c);
    // of each flat the second of three places, of each bend the third of five
    std::vector<std::vector<picture::Point>> flats(c.part.flats.size()), bends(c.part.bends.size());
    for (const job::ProfilePoint& p : points)
        (p.flat >= 0 ? flats[p.flat] : bends[p.bend]).push_back(p.drawn);
    for (const std::vector<picture::Point>& of_flat : flats) data.flat_middle.push_back(of_flat.at(1));
    for (const std::vector<picture::Point>& of_bend : bends) data.bend_middle.push_back(of_bend.at(2));
    for (std::size_t b = 0; b < c.part.bends.size(); ++b)
        data.bends.push_back(
            {c.part.bends[b].name, blank.bend_line[b], c.part.bends[b].angle, c.part.bends[b].inside_radius});
}

}  // namespace

std::string lying_words(const files::Step& step) {
    return std::string(step.face == files::Face::up ? "upper" : "lower") + " face up, " +
           (step.first == files::First::left ? "left" : "right") + " end to the left";
}

std::string turning_words(const files::Step* before, const files::Step& step) {
    if (before == nullptr) return "Place the blank like this.";
    const bool over = before->face != step.face, turned = before->first != step.first;
    if (over && turned)
        return "From the previous stroke: tip it over end for end, so that its other face points up.";
    if (over)
        return "From the previous stroke: roll it over about its length; left and right ends stay where they "
               "are.";
    if (turned) return "From the previous stroke: turn it end for end; the same face stays up.";
    return "As in the previous stroke.";
}

report::SheetData sheet_data(const files::Case& c, const job::JobResult& job) {
    report::SheetData data;
    data.title = c.title;
    data.material = words("%s, %g mm thick, %g mm wide", c.material.title.c_str(), c.thickness, c.width);
    data.blank = words("Blank %.2f mm long, cut with its length %s the rolling direction", job.blank.length,
                       c.rolling == files::Rolling::lengthwise ? "along" : "across");
    if (job.mass_g > 0.0) data.blank += words("; %.1f g", job.mass_g);
    data.blank += ".";
    data.thickness = c.thickness;
    data.blank_length = job.blank.length;
    add_part(c, job.blank, data);
    data.angle_tolerance = c.part.angle_tolerance;
    for (std::size_t i = 0; i < job.steps.size(); ++i)
        if (job.steps[i].stroke.solved()) data.strokes.push_back(stroke_data(c, job, static_cast<int>(i)));
    for (const std::string& f : job.findings) data.findings.push_back(as_sentence(f));
    data.cautions = picture::sheet_cautions();
    return data;
}

}  // namespace overbend::documents
