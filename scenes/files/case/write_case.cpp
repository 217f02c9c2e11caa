#include "scenes/files/case/write_case.h"

#include "scenes/files/case/describe.h"
#include "scenes/files/case/read_shop.h"
#include "scenes/files/case/table_writer.h"
#include "scenes/files/reading/most.h"
#include "scenes/files/reading/whole_text.h"

namespace overbend::files {

namespace {

std::string headed(const std::string& header, const Entries& entries) {
    return entries.empty() ? "" : "\n[" + header + "]\n" + entries.lines();
}

StripTable strip_of(const Case& job) {
    StripTable strip;
    strip.thickness = job.thickness, strip.width = job.width, strip.rolling = job.rolling;
    strip.thickness_tolerance = job.thickness_tolerance;
    strip.blank_length = job.blank_length, strip.bend_lines = job.bend_lines;
    if (job.card_origin.from == CardOrigin::From::assets) strip.material = job.material.name;
    if (job.card_origin.from == CardOrigin::From::file) strip.material = job.card_origin.file;
    return strip;
}

PartTable part_of(const Case& job) {
    PartTable part;
    part.length_tolerance = job.part.length_tolerance, part.angle_tolerance = job.part.angle_tolerance;
    part.radius_tolerance = job.part.radius_tolerance, part.profile_tolerance = job.part.profile_tolerance;
    for (std::size_t i = 0; i < job.part.flats.size(); ++i) {
        PathEntry& flat = part.path.emplace_back();
        flat.flat = job.part.flats[i];
        flat.leg_tolerance = job.part.leg_tolerance(i);
        if (i == job.part.bends.size()) break;
        const Bend& bend = job.part.bends[i];
        PathEntry& entry = part.path.emplace_back();
        entry.angle = bend.angle, entry.inside_radius = bend.inside_radius;
        entry.angle_tolerance = bend.tolerance, entry.radius_tolerance = bend.radius_tolerance;
        if (bend.name != "bend " + std::to_string(i + 1)) entry.name = bend.name;
    }
    for (const Cutout& cutout : job.cutouts) {
        CutoutEntry& entry = part.cutouts.emplace_back();
        entry.at = cutout.at, entry.across = cutout.across;
        if (cutout.length == cutout.width)
            entry.hole = cutout.width;
        else
            entry.slot = {cutout.length, cutout.width};
    }
    return part;
}

StepTable table_of(const Case& job, const Step& step) {
    StepTable table;
    table.name = step.name;
    for (const int bend : step.bends) table.bends.push_back(job.part.bends[bend].name);
    table.punch = job.tools[step.punch].name;
    const Tool& die = job.tools[step.die];
    table.die.tool = die.name;
    if (face_count(die) > 1) table.die.face = step.die_face;
    if (step.pad) table.pad = job.tools[*step.pad].name;
    if (step.clamp) table.clamp = ClampName{job.tools[*step.clamp].name, step.clamp_on};
    table.place = {step.face, step.first, step.shift};
    if (step.stop != StopKind::drawing_angle) table.stop.of(step.stop) = step.stop_value;
    return table;
}

// The batch always, so that the table is there.
std::string cost_text(const Case& job) {
    CostTable table{*job.cost, usual_rates(job)};
    table.usual.batch = 0;
    return headed("cost", entries_of(table));
}

}  // namespace

std::string write_case(const Case& job, const std::string& comment) {
    Entries top = entries_of(TopTable{1, job.title, job.rack});
    if (!job.press_name.empty()) top.text("press", job.press_name);
    std::string text = comment_text(comment) + top.lines() + headed("strip", entries_of(strip_of(job)));
    if (job.card_origin.from == CardOrigin::From::table)
        text += headed("material", entries_of(CardTable{job.material, job.card_origin.sources}));
    text += headed("part", entries_of(part_of(job)));
    for (const Tool& tool : job.tools)
        if (!tool.from_rack) text += headed("[tool]", entries_of(tool));
    for (const Step& step : job.steps) text += headed("[step]", entries_of(table_of(job, step)));
    if (job.press && job.press_name.empty()) text += headed("press", entries_of(*job.press));
    text += headed("handling", entries_of(job.handling));
    if (job.cost) text += cost_text(job);
    return text + headed("run", entries_of(job.run));
}

bool is_written_case(const std::filesystem::path& file) {
    try {
        return whole_text(file, most::toml_bytes).rfind(std::string("# ") + written_mark, 0) == 0;
    } catch (const Unreadable&) {
        return false;
    }
}

}  // namespace overbend::files
