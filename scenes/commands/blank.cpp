// overbend blank: the flat pattern, as a table and as a drawing.

#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "scenes/commands/blank_table.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/drawing_files.h"
#include "scenes/commands/job.h"
#include "scenes/documents/report/part_sheets.h"

namespace overbend::commands {

namespace {

struct BlankOptions {
    std::string file;
    std::optional<std::string> out;
    Output output;
};

Exit blank(const BlankOptions& options) {
    const files::Case c = read_drawing_or_job(options.file, options.out);
    const job::FlatPattern pattern = job::flat_pattern(c, with_progress(c, options.output));
    clear_progress(options.output);
    if (options.out)
        write_sheet(
            [&](int height) { return picture::draw_flat(documents::pattern_sheet(c, pattern), height); },
            make_folder(*options.out), "blank");
    if (options.output.json)
        print_json(pattern_json(c, pattern));
    else if (!options.output.quiet)
        print_pattern(c, pattern);
    return c.steps.empty() ? Exit::done : verdict(pattern.job);
}

}  // namespace

void add_blank(Program& app) {
    Command command = app.command("blank", "Flat pattern of a case: bend lines, allowances, drawings");
    const auto options = std::make_shared<BlankOptions>();
    command.option("case", options->file, "The case file").required();
    command.option("--out", options->out, "Folder for blank.svg, blank.pdf and blank.png");
    add_output(command, options->output);
    command.footer("Example: overbend blank cases/cable-hook/case.toml --out out/hook");
    command.runs([options] { return blank(*options); });
}

}  // namespace overbend::commands
