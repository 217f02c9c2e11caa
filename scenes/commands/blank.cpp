// overbend blank: the flat pattern, as a table and as a drawing.

#include <cstdio>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "render/picture/cautions.h"
#include "scenes/commands/case_place.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/drawing_files.h"
#include "scenes/commands/job.h"
#include "scenes/commands/options.h"
#include "scenes/commands/shop_print.h"
#include "scenes/documents/report/part_sheets.h"
#include "scenes/documents/tables/job_tables.h"
#include "scenes/files/reading/letters.h"
#include "sim/units.h"

namespace overbend::commands {

namespace {

struct BlankOptions {
    std::string file;
    std::optional<std::string> out;
    bool overwrite = false;
    Output output;
};

using job::FlatBend;
using job::FlatPattern;
using nlohmann::ordered_json;

void print_pattern(const files::Case& c, const FlatPattern& pattern, const Output& output) {
    std::printf("%s\n%s, %g mm thick, %g mm wide; blank %.2f mm long, %.1f g\n", c.title.c_str(),
                c.material.title.c_str(), c.thickness, c.width, pattern.blank.length, pattern.mass_g);
    std::printf("%s\n", documents::how_found(pattern));
    if (c.steps.empty())
        std::printf(
            "The case has no steps, so there are no bend lines by the mechanics. Run `overbend plan` "
            "first.\n");
    print_table(documents::bend_lines_table(c, pattern));
    print_table(documents::lengths_table(pattern));
    if (!pattern.cutouts.empty()) print_table(documents::cutouts_table(c, pattern));
    if (pattern.simulated)
        std::printf("\nWith these bend lines, the profile deviates from the drawing by at most %.2f mm.\n",
                    pattern.job.profile.greatest());
    if (!c.steps.empty()) std::printf("\n%s\n", job::verdict_words(pattern.job).c_str());
    job::Findings told = output.quiet ? job::Findings() : documents::cautions_of(pattern);
    for (const Finding& f : job::with(pattern.job.findings, Severity::stops)) job::add(told, f);
    print_findings(c, told);
    if (!output.quiet) std::printf("\n%s\n", picture::estimate_words().c_str());
}

ordered_json pattern_json(const files::Case& c, const FlatPattern& pattern) {
    ordered_json bends = ordered_json::array(), cutouts = ordered_json::array();
    const auto known = [&](double value) {
        return pattern.simulated ? ordered_json(value) : ordered_json(nullptr);
    };
    for (const FlatBend& b : pattern.bends) {
        const files::Bend& bend = c.part.bends[b.bend];
        bends.push_back({{"name", bend.name},
                         {"at_mm", b.at},
                         {"angle_deg", bend.angle / degree},
                         {"turn", bend.angle > 0.0 ? "up" : "down"},
                         {"inside_radius_mm", bend.inside_radius},
                         {"inside_radius_made_mm", known(b.made_radius)},
                         {"mid_line_stretch", known(b.mid_stretch)},
                         {"allowance_mechanics_mm", known(b.mechanics)},
                         {"allowance_din_6935_mm", b.din},
                         {"allowance_handbook_mm", b.handbook}});
    }
    for (std::size_t i = 0; i < pattern.cutouts.size(); ++i) {
        const files::Cutout& cut = c.cutouts[i];
        const job::FlatCutout& flat = pattern.cutouts[i];
        cutouts.push_back({{"at_mm", cut.at},
                           {"across_mm", cut.across},
                           {"length_mm", cut.length},
                           {"width_mm", cut.width},
                           {"nearest_bend", c.part.bends[flat.bend].name},
                           {"edge_to_bend_mm", flat.edge_to_bend},
                           {"least_mm", flat.least},
                           {"too_near", flat.too_near()}});
    }
    return {
        {"format", 2},
        {"title", c.title},
        {"material", c.material.name},
        {"thickness_mm", c.thickness},
        {"width_mm", c.width},
        {"simulated", pattern.simulated},
        {"blank_length_mm", pattern.blank.length},
        {"mass_g", pattern.mass_g},
        {"developed_mechanics_mm", known(pattern.mechanics)},
        {"developed_din_6935_mm", pattern.din},
        {"developed_handbook_mm", pattern.handbook},
        {"greatest_deviation_mm", known(pattern.job.profile.greatest())},
        {"bends", bends},
        {"cutouts", cutouts},
        {"cautions", job::sentences(c, documents::cautions_of(pattern))},
        {"verdict", c.steps.empty() ? ordered_json(nullptr) : ordered_json(job::verdict_words(pattern.job))},
        {"findings", job::sentences(c, job::with(pattern.job.findings, Severity::stops))}};
}

Exit blank(const BlankOptions& options) {
    const files::Case c = read_drawing_or_job(options.file, options.out);
    const job::FlatPattern pattern = judged_pattern(c, options.output);
    if (options.out) {
        if (!c.steps.empty()) require_solved(c, pattern.job);
        const std::filesystem::path folder = make_folder(*options.out);
        write_sheet(
            [&](int height) { return picture::draw_flat(documents::pattern_sheet(c, pattern), height); },
            folder, "blank");
        write_case_file(
            place_for_case(c, folder, "case", "blank", options.overwrite ? Overwrite::any : Overwrite::own),
            job::with_blank(c, pattern.blank),
            head_line("blank") + "From " + files::shown_letters(c.file) +
                ", with the blank fitted to its tools.\n");
    }
    if (options.output.json)
        print_json(pattern_json(c, pattern));
    else
        print_pattern(c, pattern, options.output);
    return c.steps.empty() ? Exit::done : verdict(c, pattern.job);
}

}  // namespace

void add_blank(Program& app) {
    Command command = app.command("blank", "Flat pattern of a case: bend lines, allowances, drawings");
    const auto options = std::make_shared<BlankOptions>();
    command.option("case", options->file, "The case file").required();
    command.option("--out", options->out,
                   "Folder for blank.svg, blank.pdf and blank.png, and for case.toml with this blank");
    add_overwrite(command, options->overwrite);
    add_output(command, options->output);
    command.footer("Example: overbend blank cases/cable-hook/case.toml --out out/hook");
    command.runs([options] { return blank(*options); });
}

}  // namespace overbend::commands
