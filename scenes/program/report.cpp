// overbend report: the job as one page that explains itself.

#include <cstdio>
#include <memory>
#include <optional>

#include "scenes/exchange/whole_file.h"
#include "scenes/program/commands.h"
#include "scenes/program/job.h"
#include "scenes/report/job_page.h"
#include "sim/errors.h"

namespace overbend::program {

namespace {

struct ReportCommand {
    std::string file;
    std::string out = "out/report";
    Output output;
};

void report(const ReportCommand& given, int& status) {
    Job job = run_job(given.file, given.out, given.output);
    if (!job.result.solved) throw NotSolved(job.result.findings.front());
    const Exit verdict_now = verdict(job.result);
    const scenes::FlatPattern pattern = scenes::pattern_of(job.c, std::move(job.result));
    const std::string page =
        render::page_html(scenes::job_page(job.c, pattern, std::string("overbend ") + OVERBEND_VERSION));
    const std::filesystem::path file = make_folder(given.out) / "report.html";
    scenes::write_whole(file, page);
    if (!given.output.quiet)
        std::printf("%s: %.2f MB\n", file.string().c_str(), static_cast<double>(page.size()) / 1e6);
    std::fflush(stdout);
    status = static_cast<int>(verdict_now);
}

}  // namespace

void add_report(CLI::App& app, int& status) {
    CLI::App* command =
        app.add_subcommand("report", "The whole job as one web page: players, drawings, tables, cautions");
    const auto given = std::make_shared<ReportCommand>();
    command->add_option("case", given->file, "The case file")->required();
    command->add_option("--out", given->out, "Folder for report.html")->capture_default_str();
    add_quiet(*command, given->output);
    command->footer("Example: overbend report cases/cable-hook/case.toml --out out/hook");
    command->callback([given, &status] { report(*given, status); });
}

}  // namespace overbend::program
