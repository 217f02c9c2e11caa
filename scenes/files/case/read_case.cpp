#include "scenes/files/case/read_case.h"

#include <cmath>

#include "scenes/files/case/key_list.h"
#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/nearest_key.h"
#include "scenes/files/case/read_card.h"
#include "scenes/files/case/read_part.h"
#include "scenes/files/case/read_shop.h"
#include "scenes/files/case/read_step.h"
#include "scenes/files/case/read_tools.h"
#include "scenes/files/case/read_work.h"
#include "scenes/files/case/table_reader.h"
#include "scenes/files/reading/most.h"
#include "sim/plan/bend_order.h"

namespace overbend::files {

namespace {

const char* const format_remedy = "give format = 1, the only one supported";

TopTable read_top(const StrictTable& top) {
    // Before all else, which may be different in another format.
    if (top.has("format")) {
        try {
            top.number("format", from_to(1.0, 1.0));
        } catch (const CaseError&) {
            top.complain("format", "this format is not supported", format_remedy);
        }
    }
    StrictTable(top).expect(key_names(keys_of<TopTable>()));
    if (!top.has("format")) top.complain_missing("format", format_remedy);
    return read_as<TopTable>(top);
}

void read_material(const StrictTable& top, const StrictTable& strip, const std::filesystem::path& beside,
                   Case& job) {
    const bool here = top.has("material"), named = strip.has("material");
    if (here && named) {
        top.complain("material", "the material is given twice, here and as strip.material",
                     "remove one of them");
    }
    if (!here && !named)
        strip.complain_missing("material", "name a card (" + listed(known_cards()) +
                                               ") or a .toml file, or give a table [material]");
    if (here) {
        const CardTable given = read_card_table(top.table("material", {}), "material");
        job.material = given.card;
        job.card_origin = {CardOrigin::From::table, "", given.sources};
        return;
    }
    const TomlFile card = open_asset(strip, "material", beside, material_cards);
    job.material = read_card_table(StrictTable(card), strip.text("material")).card;
    if (is_path(job.material.name))
        job.card_origin = {CardOrigin::From::file, path_from_anywhere(beside / job.material.name), {}};
}

void check_blank_length(const StrictTable& strip, const Case& job) {
    double flats = 0.0;
    for (const double flat : job.part.flats) flats += flat;
    if (!job.blank_length || *job.blank_length > flats) return;
    strip.complain("blank_length_mm",
                   written(*job.blank_length) + " is too short: the flats alone are " + worked_out(flats) +
                       " mm together",
                   "give a longer blank, or omit it: overbend then calculates it");
}

// A bend line stands clear of the next one, and of the blank's ends, by the halves of the bends between: no
// bend takes more than its mid-line.
void check_line_clear(const StrictTable& strip, const std::vector<double>& lines, std::size_t i,
                      const Case& job) {
    const auto half = [&](std::size_t bend) {
        const Bend& b = job.part.bends[bend];
        return 0.5 * std::abs(b.angle) * (b.inside_radius + 0.5 * job.thickness);
    };
    const double low = (i == 0 ? 0.0 : lines[i - 1] + half(i - 1)) + half(i);
    const double high = *job.blank_length - half(i);
    const std::string of = "the line of bend " + in_quotes(job.part.bends[i].name) + " ";
    if (lines[i] >= high)
        strip.complain_in_list("bend_lines_mm", i,
                               of + "leaves no room for the bend before the blank's end at " +
                                   worked_out(*job.blank_length) + " mm",
                               "give less than " + worked_out(high) + " mm");
    if (lines[i] <= low)
        strip.complain_in_list("bend_lines_mm", i,
                               of + (i == 0 ? "leaves no room for the bend at the blank's left end"
                                            : "leaves no room for the bend beside the line before it"),
                               "give more than " + worked_out(low) + " mm, from the blank's left end");
}

void check_bend_lines(const StrictTable& strip, const Case& job) {
    if (!strip.has("bend_lines_mm")) return;
    const std::vector<double>& lines = job.bend_lines;
    if (!job.blank_length)
        strip.complain("bend_lines_mm", "bend lines are given without a blank length",
                       "give blank_length_mm too, or omit both: overbend then calculates them");
    if (lines.size() != job.part.bends.size())
        strip.complain("bend_lines_mm",
                       "there are " + std::to_string(lines.size()) + " bend lines for " +
                           std::to_string(job.part.bends.size()) + " bends",
                       "give one for each bend of the path, from the blank's left end");
    for (std::size_t i = 0; i < lines.size(); ++i) check_line_clear(strip, lines, i, job);
}

std::vector<Step> read_steps(const StrictTable& top, const Case& job) {
    std::vector<Step> steps;
    const std::vector<StrictTable> entries = top.tables("step", {});
    top.check_count("step", entries.size(), most::steps);
    if (!entries.empty() && job.tools.empty())
        top.complain("tool", "there are steps but no tools",
                     "give at least one punch and one die, each as a [[tool]]");
    for (const StrictTable& entry : entries) steps.push_back(read_step(entry, job, steps));
    return steps;
}

void check_anything_to_press(const StrictTable& top, const Case& job) {
    const char* const planned = ", or run \"overbend plan\" to find them";
    if (job.tools.empty())
        top.complain("tool", "there are no tools",
                     std::string("give at least one punch and one die, each as a [[tool]]") + planned);
    if (job.steps.empty())
        top.complain("step", "there are no steps", std::string("give at least one [[step]]") + planned);
}

void check_all_bends_made(const StrictTable& part, const Case& job) {
    std::vector<bool> made(job.part.bends.size(), false);
    for (const Step& step : job.steps) {
        for (const int bend : step.bends) made[bend] = true;
    }
    for (std::size_t bend = 0; bend < made.size(); ++bend) {
        if (made[bend]) continue;
        const std::string name = in_quotes(job.part.bends[bend].name);
        complain_of_bend(part, bend, "no step makes the bend " + name,
                         "name " + name + " in the bends of a step");
    }
}

template <class T>
T read_if(const StrictTable& top, const char* key) {
    return top.has(key) ? read_as<T>(top.table(key, {})) : T{};
}

void check_plannable(const StrictTable& part, const Case& job) {
    const int bends = static_cast<int>(job.part.bends.size());
    if (bends > plan::most_bends_to_order)
        part.complain("path", std::to_string(bends) + " bends are too many to plan",
                      "give at most " + std::to_string(plan::most_bends_to_order) + ", or write the steps");
    for (int b = 0; b < bends; ++b)
        if (std::abs(job.part.bends[b].angle) > plan::sharpest_to_order)
            complain_of_bend(part, static_cast<std::size_t>(b),
                             in_quotes(job.part.bends[b].name) + " is a hem; hems cannot be planned",
                             "write the steps for this part");
}

void read_strip(const StrictTable& strip, Case& job) {
    const StripTable given = read_as<StripTable>(strip);
    job.thickness = given.thickness, job.width = given.width, job.rolling = given.rolling;
    job.thickness_tolerance = given.thickness_tolerance;
    if (given.thickness_tolerance.value_or(0.0) > 0.5 * given.thickness)
        strip.complain("thickness_tolerance_mm", "is more than half of thickness_mm",
                       "give what the thickness may be off, at most half of it");
    job.blank_length = given.blank_length, job.bend_lines = given.bend_lines;
}

// beside: the folder that relative paths start from
Case read_whole_case(const TomlFile& toml, const std::filesystem::path& beside, Needs needs) {
    const StrictTable top(toml);
    Case job;
    job.file = toml.file;
    job.title = read_top(top).title;

    const StrictTable strip = top.table("strip", key_names(keys_of<StripTable>()));
    read_material(top, strip, beside, job);
    read_strip(strip, job);

    const StrictTable part = top.table("part", key_names(keys_of<PartTable>()));
    const PartTable given = read_as<PartTable>(part);
    job.part = read_part(part, given, job.thickness);
    check_blank_length(strip, job);
    check_bend_lines(strip, job);
    job.cutouts = read_cutouts(part, given, job.part, job.thickness, job.width, job.blank_length);

    const ToolsAtHand at_hand = read_tools(top, beside, job.width);
    job.rack = at_hand.rack;
    job.tools = at_hand.tools;
    job.steps = read_steps(top, job);
    if (needs == Needs::steps) {
        check_anything_to_press(top, job);
        check_all_bends_made(part, job);
        check_hems_laid(part, job);
    }
    if (needs == Needs::plan) check_plannable(part, job);
    read_press(top, beside, job);
    job.handling = read_if<Handling>(top, "handling");
    job.cost = read_cost(top, job);
    job.run = read_if<RunOptions>(top, "run");
    return job;
}

}  // namespace

Case read_case(const std::filesystem::path& file, Needs needs) {
    return read_whole_case(read_toml(file), file.parent_path(), needs);
}

Case read_case_text(const std::string& text, const std::filesystem::path& file, Needs needs) {
    return read_whole_case(parse_toml(text, file.string()), file.parent_path(), needs);
}

}  // namespace overbend::files
