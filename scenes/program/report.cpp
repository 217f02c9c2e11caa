// overbend report: the job as one page that explains itself, as sheets for the shop, and its figures.

#include <algorithm>
#include <cstdio>
#include <memory>
#include <optional>

#include "scenes/exchange/whole_file.h"
#include "scenes/program/commands.h"
#include "scenes/program/drawing_files.h"
#include "scenes/program/job.h"
#include "scenes/program/report_figures.h"
#include "scenes/report/job_page.h"
#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::program {

namespace {

struct ReportCommand {
    std::string file;
    std::string out = "out/report";
    std::string theme = "light";
    std::vector<std::string> only = {"page", "sheets", "figures"};
    Output output;
    bool wants(const char* part) const { return std::find(only.begin(), only.end(), part) != only.end(); }
};

struct Made {
    std::string page;  // empty: not asked for
    std::vector<scenes::Drawing> drawings;
};

// The job's recordings are lent to the page while it is made.
Made make(Job& job, const ReportCommand& given) {
    Made made;
    if (!given.wants("page") && !given.wants("figures")) return made;
    scenes::FlatPattern pattern = scenes::pattern_of(job.c, std::move(job.result));
    made.drawings = scenes::all_drawings(job.c, pattern, scenes::Tolerances::none);
    if (given.wants("page"))
        made.page = render::page_html(scenes::job_page(job.c, pattern, job.shop, made.drawings,
                                                       std::string("overbend ") + OVERBEND_VERSION));
    job.result = std::move(pattern.job);
    return made;
}

void report(const ReportCommand& given, int& status) {
    Job job = run_job(given.file, given.out, given.output);
    if (!job.result.solved) throw NotSolved(job.result.findings.front());
    const auto tell = [&](const std::string& what) {
        if (!given.output.quiet) std::printf("%s\n", what.c_str());
    };
    const Made made = make(job, given);
    const std::filesystem::path folder = make_folder(given.out);
    if (given.wants("page")) {
        const std::filesystem::path file = folder / "report.html";
        scenes::write_whole(file, made.page);
        tell(file.string() + words(": %.2f MB", static_cast<double>(made.page.size()) / 1e6));
    }
    if (given.wants("sheets")) tell(write_sheets(job, folder).string());
    if (given.wants("figures")) {
        const std::filesystem::path figures = make_folder((folder / "figures").string());
        const render::Theme theme = given.theme == "dark" ? render::Theme::dark : render::Theme::light;
        const std::size_t charts = write_figures(job, figures, theme).size();
        const int drawings = write_drawings(made.drawings, make_folder((figures / "drawings").string()),
                                            DrawingKinds::paper_and_dxf);
        tell(figures.string() + words(": %zu files, and %d in drawings", charts, drawings));
    }
    std::fflush(stdout);
    status = static_cast<int>(verdict(job.result));
}

}  // namespace

void add_report(CLI::App& app, int& status) {
    CLI::App* command =
        app.add_subcommand("report", "The whole job as one web page, as sheets for the shop and as figures");
    const auto given = std::make_shared<ReportCommand>();
    command->add_option("case", given->file, "The case file")->required();
    command->add_option("--out", given->out, "Folder for report.html, sheets.pdf and figures")
        ->capture_default_str();
    command->add_option("--theme", given->theme, "Of the figures: light for paper, dark for a dark room")
        ->check(CLI::IsMember({"light", "dark"}))
        ->capture_default_str();
    command->add_option("--only", given->only, "Parts of it: page, sheets, figures, with commas between")
        ->delimiter(',')
        ->allow_extra_args(false)  // what follows may be the case file
        ->check(one_of({"page", "sheets", "figures"}))
        ->default_str("page,sheets,figures");
    add_quiet(*command, given->output);
    command->footer("Example: overbend report cases/cable-hook/case.toml --out out/hook");
    command->callback([given, &status] { report(*given, status); });
}

}  // namespace overbend::program
