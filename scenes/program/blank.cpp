// overbend blank: the flat pattern, as a table and as a drawing.

#include <iostream>
#include <memory>
#include <optional>

#include "render/picture/painter.h"
#include "scenes/program/blank_table.h"
#include "scenes/program/commands.h"
#include "scenes/program/job.h"

namespace overbend::program {

namespace {

constexpr int page_height = 794;  // px of 0.75 pt: a sheet of A4 lying on its side
constexpr int png_height = 1588;  // twice as fine

struct BlankOptions {
    std::string file;
    std::optional<std::string> out;
    Output output;
};

void write_drawings(const render::FlatSheet& sheet, const std::filesystem::path& folder) {
    const render::DrawingList page = render::draw_flat(sheet, page_height);
    render::write_svg(page, folder / "blank.svg");
    render::write_pdf(page, folder / "blank.pdf");
    render::write_png(render::draw_flat(sheet, png_height), folder / "blank.png");
}

void blank(const BlankOptions& options, int& status) {
    const scenes::Case c = read_job_case(options.file, options.out);
    const scenes::FlatPattern pattern = scenes::flat_pattern(c, with_progress(c, options.output));
    clear_progress(options.output);
    if (options.out) write_drawings(pattern_sheet(c, pattern), make_folder(*options.out));
    if (options.output.json)
        print_json(pattern_json(c, pattern));
    else if (!options.output.quiet)
        print_pattern(c, pattern);
    std::fflush(stdout);
    if (!c.steps.empty()) status = static_cast<int>(verdict(pattern.job));
}

}  // namespace

void add_blank(CLI::App& app, int& status) {
    CLI::App* command =
        app.add_subcommand("blank", "The flat pattern of a case: bend lines, allowances, drawings");
    const auto options = std::make_shared<BlankOptions>();
    command->add_option("case", options->file, "The case file")->required();
    command->add_option("--out", options->out, "Folder for blank.svg, blank.pdf and blank.png");
    add_output(*command, options->output);
    command->footer("Example: overbend blank cases/cable-hook/case.toml --out out/hook");
    command->callback([options, &status] { blank(*options, status); });
}

}  // namespace overbend::program
