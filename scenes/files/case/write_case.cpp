#include "scenes/files/case/write_case.h"

#include "scenes/files/case/toml_text.h"
#include "scenes/files/case/write_card.h"
#include "scenes/files/case/write_cost.h"
#include "scenes/files/case/write_tool.h"

namespace overbend::files {

namespace {

std::string headed(const std::string& header, const Entries& entries) {
    return entries.empty() ? "" : "\n[" + header + "]\n" + entries.lines();
}

// ---- the strip and its material

std::string strip_text(const Case& job) {
    Entries entries;
    if (job.card_origin.from == CardOrigin::From::assets) entries.text("material", job.material.name);
    if (job.card_origin.from == CardOrigin::From::file) entries.text("material", job.card_origin.file);
    entries.number("thickness_mm", job.thickness).number("width_mm", job.width);
    if (job.blank_length) entries.number("blank_length_mm", *job.blank_length);
    if (!job.bend_lines.empty()) entries.as_is("bend_lines_mm", numbers_text(job.bend_lines));
    if (job.rolling == Rolling::crosswise) entries.text("rolling", "crosswise");
    return headed("strip", entries);
}

std::string material_text(const Case& job) {
    if (job.card_origin.from != CardOrigin::From::table) return "";
    return "\n[material]\n" + write_card_entries(job.material, "material", job.card_origin.sources);
}

// ---- the part

std::string path_text(const Part& part) {
    std::vector<std::string> tables;
    for (std::size_t i = 0; i < part.flats.size(); ++i) {
        tables.push_back(Entries().number("flat_mm", part.flats[i]).inline_table());
        if (i == part.bends.size()) break;
        const Bend& bend = part.bends[i];
        Entries entries;
        entries.angle("bend_deg", bend.angle).number("inside_radius_mm", bend.inside_radius);
        if (bend.name != "bend " + std::to_string(i + 1)) entries.text("name", bend.name);
        tables.push_back(entries.inline_table());
    }
    return long_list_text(tables);
}

std::string cutouts_text(const std::vector<Cutout>& cutouts) {
    std::vector<std::string> tables;
    for (const Cutout& cutout : cutouts) {
        Entries entries;
        entries.number("at_mm", cutout.at).number("across_mm", cutout.across);
        if (cutout.length == cutout.width)
            entries.number("hole_mm", cutout.width);
        else
            entries.as_is("slot_mm", numbers_text({cutout.length, cutout.width}));
        tables.push_back(entries.inline_table());
    }
    return list_text(tables);
}

std::string part_text(const Case& job) {
    Entries entries;
    entries.angle("angle_tolerance_deg", job.part.angle_tolerance);
    entries.as_is("path", path_text(job.part));
    if (!job.cutouts.empty()) entries.as_is("cutouts", cutouts_text(job.cutouts));
    return headed("part", entries);
}

// ---- the steps

std::string die_text(const Step& step, const Tool& die) {
    const auto* vee = std::get_if<tool::VeeDie>(&die.shape);
    if (!vee || vee->faces.size() == 1) return files::quoted(die.name);
    return Entries().text("tool", die.name).whole("face", step.die_face).inline_table();
}

Entries place_of(const Step& step) {
    Entries entries;
    if (step.face == Face::down) entries.text("face", "down");
    if (step.first == First::right) entries.text("first", "right");
    entries.number_unless(0.0, "shift_mm", step.shift);
    return entries;
}

Entries stop_of(const Step& step) {
    Entries entries;
    if (step.stop == StopKind::free_angle) entries.angle("free_deg", step.stop_value);
    if (step.stop == StopKind::travel) entries.number("travel_mm", step.stop_value);
    if (step.stop == StopKind::force) entries.number("force_kN", step.stop_value);
    if (step.stop == StopKind::gap) entries.number("gap_mm", step.stop_value);
    return entries;
}

std::string step_text(const Case& job, const Step& step) {
    Entries entries;
    std::vector<std::string> bends;
    for (const int bend : step.bends) bends.push_back(job.part.bends[bend].name);
    entries.text("name", step.name).as_is("bends", texts_text(bends));
    entries.text("punch", job.tools[step.punch].name).as_is("die", die_text(step, job.tools[step.die]));
    if (step.pad) entries.text("pad", job.tools[*step.pad].name);
    if (step.clamp) {
        const std::string& name = job.tools[*step.clamp].name;
        const std::string on_ram = Entries().text("tool", name).text("on", "ram").inline_table();
        entries.as_is("clamp", step.clamp_on == ClampOn::ram ? on_ram : files::quoted(name));
    }
    if (const Entries place = place_of(step); !place.empty()) entries.as_is("place", place.inline_table());
    if (const Entries stop = stop_of(step); !stop.empty()) entries.as_is("stop", stop.inline_table());
    return headed("[step]", entries);
}

// ---- the press and the run

std::string gauge_text(const Gauge& gauge) {
    Entries entries;
    entries.number("height_mm", gauge.height).number("length_mm", gauge.length);
    entries.number_unless(Gauge{}.draws_back, "draws_back_mm", gauge.draws_back);
    if (gauge.reach) entries.number("reach_mm", *gauge.reach);
    if (gauge.nearest) entries.number("nearest_mm", *gauge.nearest);
    return entries.inline_table();
}

std::string speeds_text(const shop::RamSpeeds& speeds) {
    Entries entries;
    entries.number("approach_mm_per_s", speeds.approach).number("pressing_mm_per_s", speeds.pressing);
    entries.number("return_mm_per_s", speeds.going_back);
    entries.number_unless(shop::RamSpeeds{}.slow_above, "slow_above_mm", speeds.slow_above);
    entries.number_unless(shop::RamSpeeds{}.dwell, "dwell_s", speeds.dwell);
    return entries.inline_table();
}

std::string press_text(const Press& press) {
    Entries entries;
    if (!press.title.empty()) entries.text("title", press.title);
    entries.number("force_kN", press.force).number("stroke_mm", press.stroke);
    const auto block = [&](const char* key, const std::optional<PressBlock>& given) {
        if (!given) return;
        entries.as_is(
            key,
            Entries().number("width_mm", given->width).number("height_mm", given->height).inline_table());
    };
    block("punch_holder", press.punch_holder);
    block("die_holder", press.die_holder);
    block("ram", press.ram);
    block("bed", press.bed);
    if (press.gauge) entries.as_is("gauge", gauge_text(*press.gauge));
    const auto known = [&](const char* key, const std::optional<double>& value) {
        if (value) entries.number(key, *value);
    };
    known("daylight_mm", press.daylight);
    known("throat_mm", press.throat);
    known("line_load_kN_per_m", press.line_load);
    known("off_centre_kN_m", press.off_centre);
    known("energy_J", press.energy);
    if (press.speeds) entries.as_is("speed", speeds_text(*press.speeds));
    known("price_per_h", press.price_per_hour);
    known("idle_kW", press.idle_power);
    return headed("press", entries);
}

std::string handling_text(const Handling& handling) {
    const Handling usual;
    Entries entries;
    entries.number_unless(usual.stroke, "stroke_s", handling.stroke);
    entries.number_unless(usual.turn, "turn_s", handling.turn);
    entries.number_unless(usual.flip, "flip_s", handling.flip);
    entries.number_unless(usual.tool_change, "tool_change_s", handling.tool_change);
    entries.number_unless(usual.gauge_change, "gauge_change_s", handling.gauge_change);
    entries.number_unless(usual.slide, "slide_s", handling.slide);
    return headed("handling", entries);
}

std::string run_text(const RunOptions& run) {
    const RunOptions usual;
    Entries entries;
    entries.number_unless(usual.friction, "friction", run.friction);
    if (run.layers != usual.layers) entries.whole("layers", run.layers);
    entries.number_unless(usual.elements_per_thickness, "elements_per_thickness", run.elements_per_thickness);
    if (run.gravity) entries.as_is("gravity", "true");
    return headed("run", entries);
}

}  // namespace

std::string write_case(const Case& job, const std::string& comment) {
    Entries top;
    top.whole("format", 1).text("title", job.title);
    if (!job.rack.empty()) top.text("rack", job.rack);
    if (!job.press_name.empty()) top.text("press", job.press_name);
    std::string text =
        comment_text(comment) + top.lines() + strip_text(job) + material_text(job) + part_text(job);
    for (const Tool& tool : job.tools)
        if (!tool.from_rack) text += "\n" + write_tool(tool);
    for (const Step& step : job.steps) text += step_text(job, step);
    if (job.press && job.press_name.empty()) text += press_text(*job.press);
    text += handling_text(job.handling);
    if (job.cost) text += headed("cost", cost_entries(job));
    return text + run_text(job.run);
}

}  // namespace overbend::files
