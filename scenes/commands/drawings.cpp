// overbend drawings: dimensioned drawings of the tools, the blank and the part, and DXF files for the
// machines.

#include "scenes/documents/drawings/drawings.h"

#include <cstdio>
#include <memory>

#include "render/picture/painter.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/drawing_files.h"
#include "scenes/commands/job.h"
#include "scenes/commands/shop_print.h"

namespace overbend::commands {

namespace {

constexpr double pixels_per_mm = 6.0;

struct DrawingsOptions {
    std::string file;
    std::string out = "out/drawings";
    bool dxf = false;
    bool png = false;
    bool tolerances = false;
    Output output;
};

Exit drawings(const DrawingsOptions& options) {
    const files::Case c = read_drawing_or_job(options.file, options.out);
    const job::FlatPattern pattern = judged_pattern(c, options.output);
    if (!c.steps.empty()) require_solved(c, pattern.job);
    const std::filesystem::path folder = make_folder(options.out);
    const std::vector<documents::Drawing> drawn = documents::all_drawings(
        c, pattern, options.tolerances ? drawing::Tolerances::iso_2768_m : drawing::Tolerances::none);
    write_drawings(drawn, folder, options.dxf ? DrawingKinds::paper_and_dxf : DrawingKinds::paper);
    for (const documents::Drawing& d : drawn) {
        if (options.png)
            picture::write_png(picture::scaled(d.sheet.list, pixels_per_mm), folder / (d.file + ".png"));
        if (!options.output.quiet)
            std::printf("%-32s %s, %s%s\n", d.file.c_str(), d.sheet.paper.c_str(),
                        d.sheet.scale_words.c_str(),
                        d.sheet.missing.empty() ? "" : ", not all dimensions fit");
    }
    if (c.steps.empty()) return Exit::done;
    print_refusal(c, pattern.job);
    return verdict(c, pattern.job);
}

}  // namespace

void add_drawings(Program& app) {
    Command command =
        app.command("drawings", "Dimensioned drawings of tools, blank and part; DXF for the machines");
    const auto options = std::make_shared<DrawingsOptions>();
    command.option("case", options->file, "The case file").required();
    command.option("--out", options->out, "Folder for tool-NAME, blank and part, as .svg and .pdf each")
        .shows_default();
    command.flag("--dxf", options->dxf, "also write DXF files, for wire erosion and laser");
    command.flag("--png", options->png, "also write PNG files");
    command.flag("--tolerances", options->tolerances,
                 "print general tolerances of ISO 2768-m beside the dimensions");
    add_quiet(command, options->output);
    command.footer("Example: overbend drawings cases/cable-hook/case.toml --out out/hook --dxf");
    command.runs([options] { return drawings(*options); });
}

}  // namespace overbend::commands
