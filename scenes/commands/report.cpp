// overbend report: the job as one page that explains itself, as sheets for the shop, and its figures.

#include <algorithm>
#include <cstdio>
#include <memory>
#include <optional>

#include "render/output/whole_file.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/drawing_files.h"
#include "scenes/commands/job.h"
#include "scenes/commands/shop_print.h"
#include "scenes/documents/report/report_files.h"
#include "sim/counted.h"
#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::commands {

namespace {

struct ReportCommand {
    std::string file;
    std::string out = "out/report";
    std::string theme = "light";
    std::vector<std::string> only = {"page", "sheets", "figures"};
    std::optional<std::string> against;
    Output output;
    bool wants(const char* part) const { return std::find(only.begin(), only.end(), part) != only.end(); }
};

Exit report(const ReportCommand& given) {
    Job job = run_job(given.file, given.out, given.output, job::Spread::worked_out);
    require_solved(job.c, job.result);
    if (given.against) add_alternative(job, *given.against, given.out, given.output);
    const auto tell = [&](const std::string& what) {
        if (!given.output.quiet) std::printf("%s\n", what.c_str());
    };
    const std::vector<documents::Drawing> drawings = given.wants("page") || given.wants("figures")
                                                         ? documents::report_drawings(job.c, job.result)
                                                         : std::vector<documents::Drawing>();
    const std::string page =
        given.wants("page") ? documents::report_page(job.c, job.result, job.shop, drawings) : "";
    const std::filesystem::path folder = make_folder(given.out);
    if (given.wants("page")) {
        const std::filesystem::path file = folder / "report.html";
        output::write_whole(file, page);
        tell(file.string() + words(": %.2f MB", static_cast<double>(page.size()) / 1e6));
    }
    if (given.wants("sheets")) tell(documents::write_sheets(job.c, job.result, folder).string());
    if (given.wants("figures")) {
        const std::filesystem::path figures = make_folder((folder / "figures").string());
        const picture::Theme theme = given.theme == "dark" ? picture::Theme::dark : picture::Theme::light;
        const std::size_t charts =
            documents::write_figures(job.c, job.result, job.shop, figures, theme).size();
        const int drawn = write_drawings(drawings, make_folder((figures / "drawings").string()),
                                         DrawingKinds::paper_and_dxf);
        tell(figures.string() + ": " + counted(charts, "file") + ", and " +
             counted(static_cast<std::size_t>(drawn), "file") + " in drawings");
    }
    print_refusal(job.c, job.result);
    return verdict(job.c, job.result);
}

}  // namespace

void add_report(Program& app) {
    Command command =
        app.command("report", "Report of the whole job: web page, sheets for the shop, figures");
    const auto given = std::make_shared<ReportCommand>();
    command.option("case", given->file, "The case file").required();
    command.option("--out", given->out, "Folder for report.html, sheets.pdf and figures").shows_default();
    command.option("--theme", given->theme, "Colours of the figures: light for paper, dark for a dark room",
                   one_of({"light", "dark"}));
    command.option("--only", given->only, "What to write: page, sheets, figures, separated by commas")
        .with_commas()
        .check(one_of({"page", "sheets", "figures"}))
        .shows_default("page,sheets,figures");
    command.option("--against", given->against, "Another case, to compare its cost");
    add_quiet(command, given->output);
    command.footer("Example: overbend report cases/cable-hook/case.toml --out out/hook");
    command.runs([given] { return report(*given); });
}

}  // namespace overbend::commands
