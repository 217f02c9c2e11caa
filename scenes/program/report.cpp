// overbend report: the job as one page that explains itself, as sheets for the shop, and its figures.

#include <cstdio>
#include <memory>
#include <optional>

#include "scenes/exchange/whole_file.h"
#include "scenes/program/commands.h"
#include "scenes/program/job.h"
#include "scenes/program/report_figures.h"
#include "scenes/report/job_page.h"
#include "sim/errors.h"

namespace overbend::program {

namespace {

struct ReportCommand {
    std::string file;
    std::string out = "out/report";
    std::string theme = "light";
    Output output;
};

void report(const ReportCommand& given, int& status) {
    Job job = run_job(given.file, given.out, given.output);
    if (!job.result.solved) throw NotSolved(job.result.findings.front());
    const Exit verdict_now = verdict(job.result);
    const std::filesystem::path folder = make_folder(given.out);
    const std::filesystem::path sheets = write_sheets(job, folder);
    const std::size_t figures =
        write_figures(job, make_folder((folder / "figures").string()),
                      given.theme == "dark" ? render::Theme::dark : render::Theme::light)
            .size();
    const scenes::FlatPattern pattern = scenes::pattern_of(job.c, std::move(job.result));
    const std::string page =
        render::page_html(scenes::job_page(job.c, pattern, std::string("overbend ") + OVERBEND_VERSION));
    const std::filesystem::path file = folder / "report.html";
    scenes::write_whole(file, page);
    if (!given.output.quiet) {
        std::printf("%s: %.2f MB\n", file.string().c_str(), static_cast<double>(page.size()) / 1e6);
        std::printf("%s\n%s: %zu files\n", sheets.string().c_str(), (folder / "figures").string().c_str(),
                    figures);
    }
    std::fflush(stdout);
    status = static_cast<int>(verdict_now);
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
    add_quiet(*command, given->output);
    command->footer("Example: overbend report cases/cable-hook/case.toml --out out/hook");
    command->callback([given, &status] { report(*given, status); });
}

}  // namespace overbend::program
