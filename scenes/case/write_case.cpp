#include "scenes/case/write_case.h"

#include <filesystem>
#include <sstream>

#include "scenes/case/write_card.h"
#include "scenes/case/write_tool.h"

namespace overbend::scenes {

namespace {

// ---- strip and part

bool is_file(const std::string& material) {
    return material.find('/') != std::string::npos ||
           (material.size() > 5 && material.compare(material.size() - 5, 5, ".toml") == 0);
}

// A card's file is looked for beside the case it was named in.
std::string whole_path(const Case& c) {
    const std::filesystem::path beside = std::filesystem::path(c.file).parent_path();
    return std::filesystem::absolute(beside / c.material.name).lexically_normal().string();
}

std::string list_text(const std::vector<double>& values) {
    std::string text;
    for (const double v : values) text += (text.empty() ? "[" : ", ") + number_text(v);
    return text + "]";
}

void write_strip(const Case& c, Lines& lines) {
    lines.header("[strip]");
    const bool table = c.material.name == "material";
    if (!table) lines.text("material", is_file(c.material.name) ? whole_path(c) : c.material.name);
    lines.number("thickness_mm", c.thickness).number("width_mm", c.width);
    if (c.rolling == Rolling::crosswise) lines.text("rolling", "crosswise");
    if (c.blank_length) lines.number("blank_length_mm", *c.blank_length);
    if (!c.bend_lines.empty()) lines.put("bend_lines_mm", list_text(c.bend_lines));
    if (table) write_card(c.material, lines);
}

std::string cutout_text(const Cutout& cut) {
    Inline text;
    text.number("at_mm", cut.at).number("across_mm", cut.across);
    if (cut.length == cut.width)
        text.number("hole_mm", cut.width);
    else
        text.put("slot_mm", list_text({cut.length, cut.width}));
    return text.str();
}

void write_part(const Case& c, Lines& lines) {
    lines.header("[part]").degrees("angle_tolerance_deg", c.part.angle_tolerance);
    std::vector<std::string> path;
    for (std::size_t i = 0; i < c.part.flats.size(); ++i) {
        path.push_back(Inline().number("flat_mm", c.part.flats[i]).str());
        if (i >= c.part.bends.size()) continue;
        const Bend& bend = c.part.bends[i];
        path.push_back(Inline()
                           .degrees("bend_deg", bend.angle)
                           .number("inside_radius_mm", bend.inside_radius)
                           .text("name", bend.name)
                           .str());
    }
    lines.list("path", path);
    std::vector<std::string> cutouts;
    for (const Cutout& cut : c.cutouts) cutouts.push_back(cutout_text(cut));
    if (!cutouts.empty()) lines.list("cutouts", cutouts);
}

// ---- steps

std::string stop_text(const Step& step) {
    switch (step.stop) {
        case StopKind::drawing_angle:
            break;
        case StopKind::free_angle:
            return Inline().degrees("free_deg", step.stop_value).str();
        case StopKind::travel:
            return Inline().number("travel_mm", step.stop_value).str();
        case StopKind::force:
            return Inline().number("force_kN", step.stop_value).str();
        case StopKind::gap:
            return Inline().number("gap_mm", step.stop_value).str();
    }
    return "";
}

std::string place_text(const Step& step) {
    const bool usual = step.face == Face::up && step.first == First::left && step.shift == 0.0;
    if (usual) return "";
    Inline text;
    if (step.face == Face::down) text.text("face", "down");
    if (step.first == First::right) text.text("first", "right");
    if (step.shift != 0.0) text.number("shift_mm", step.shift);
    return text.str();
}

void write_step(const Case& c, const Step& step, Lines& lines) {
    lines.header("[[step]]").text("name", step.name);
    std::string bends;
    for (const int b : step.bends) bends += (bends.empty() ? "[" : ", ") + quoted_text(c.part.bends[b].name);
    lines.put("bends", bends + "]").text("punch", c.tools[step.punch].name);
    const Tool& die = c.tools[step.die];
    const auto* vee = std::get_if<tool::VeeDie>(&die.shape);
    if (vee && vee->faces.size() > 1)
        lines.put("die", Inline().text("tool", die.name).put("face", std::to_string(step.die_face)).str());
    else
        lines.text("die", die.name);
    if (step.pad) lines.text("pad", c.tools[*step.pad].name);
    if (step.clamp)
        lines.put("clamp", Inline()
                               .text("tool", c.tools[*step.clamp].name)
                               .text("on", step.clamp_on == ClampOn::ram ? "ram" : "frame")
                               .str());
    if (!place_text(step).empty()) lines.put("place", place_text(step));
    if (!stop_text(step).empty()) lines.put("stop", stop_text(step));
}

// ---- press, handling, run

std::string block_text(const PressBlock& block) {
    return Inline().number("width_mm", block.width).number("height_mm", block.height).str();
}

void write_press(const Press& press, Lines& lines) {
    lines.header("[press]");
    if (!press.title.empty()) lines.text("title", press.title);
    lines.number("force_kN", press.force).number("stroke_mm", press.stroke);
    if (press.punch_holder) lines.put("punch_holder", block_text(*press.punch_holder));
    if (press.die_holder) lines.put("die_holder", block_text(*press.die_holder));
    if (press.ram) lines.put("ram", block_text(*press.ram));
    if (press.bed) lines.put("bed", block_text(*press.bed));
    if (!press.gauge) return;
    Inline gauge;
    gauge.number("height_mm", press.gauge->height).number("length_mm", press.gauge->length);
    if (press.gauge->stays) gauge.put("stays", "true");
    lines.put("gauge", gauge.str());
}

void write_handling(const Handling& h, Lines& lines) {
    lines.header("[handling]").number("stroke_s", h.stroke).number("turn_s", h.turn).number("flip_s", h.flip);
    lines.number("tool_change_s", h.tool_change).number("gauge_change_s", h.gauge_change);
    lines.number("slide_s", h.slide);
}

void write_run(const RunOptions& run, Lines& lines) {
    lines.header("[run]").number("friction", run.friction).put("layers", std::to_string(run.layers));
    lines.number("elements_per_thickness", run.elements_per_thickness);
    lines.put("gravity", run.gravity ? "true" : "false");
}

}  // namespace

std::string write_case(const Case& c, const std::string& head) {
    Lines lines;
    std::istringstream comments(head);
    for (std::string line; std::getline(comments, line);) lines.raw("# " + line);
    lines.put("format", "1").text("title", c.title);
    write_strip(c, lines);
    write_part(c, lines);
    for (const Tool& tool : c.tools) write_tool(tool, lines);
    for (const Step& step : c.steps) write_step(c, step, lines);
    if (c.press) write_press(*c.press, lines);
    write_handling(c.handling, lines);
    write_run(c.run, lines);
    return lines.str();
}

}  // namespace overbend::scenes
