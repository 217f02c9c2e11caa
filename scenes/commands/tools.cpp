// overbend tools: the tools of a job as parts: steel, block, hours and strength.

#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "render/output/whole_file.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/job.h"
#include "scenes/commands/shop_print.h"
#include "scenes/documents/results/shop_json.h"

namespace overbend::commands {

namespace {

using nlohmann::ordered_json;

struct ToolsOptions {
    std::string file;
    std::optional<std::string> out;
    Output output;
};

Exit tools(const ToolsOptions& options) {
    const Job job = run_job(options.file, options.out, options.output);
    require_solved(job.c, job.result);
    const auto told = [&](Severity severity) {
        return job::sentences(job.c, job::with(job.shop.findings, severity));
    };
    const ordered_json json = {
        {"format", 2},
        {"title", job.c.title},
        {"verdict", job::verdict_words(job.result)},
        {"tools", documents::tools_json(job.c, job.shop)},
        {"findings", job::sentences(job.c, job::with(job.result.findings, Severity::stops))},
        {"cautions", told(Severity::caution)},
        {"not_checked", told(Severity::not_checked)}};
    if (options.out) output::write_whole(make_folder(*options.out) / "tools.json", json.dump(1) + "\n");
    if (options.output.json)
        print_json(json);
    else
        print_refusal(job.c, job.result), print_tools(job.c, job.shop);
    return verdict(job.c, job.result);
}

}  // namespace

void add_tools(Program& app) {
    Command command = app.command("tools", "Tools of a job: stress, steel, blocks, hours, springs");
    const auto options = std::make_shared<ToolsOptions>();
    command.option("case", options->file, "The case file").required();
    command.option("--out", options->out, "Folder for tools.json");
    add_output(command, options->output);
    command.footer("Example: overbend tools cases/cable-hook/case.toml");
    command.runs([options] { return tools(*options); });
}

}  // namespace overbend::commands
