// overbend check: the whole job of a case, numbers and verdict.

#include <cmath>
#include <cstdio>
#include <iostream>
#include <memory>
#include <optional>

#include "render/output/whole_file.h"
#include "render/picture/cautions.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/job.h"
#include "scenes/commands/shop_print.h"
#include "scenes/documents/results/results_json.h"
#include "scenes/documents/tables/job_tables.h"
#include "sim/counted.h"

namespace overbend::commands {

namespace {

constexpr double worth_a_word = 0.05;  // mm, that a stated blank is off the fitted one

struct CheckOptions {
    std::string file;
    std::optional<std::string> out;
    Output output;
};

void print_job(const files::Case& c, const job::JobResult& job, const job::ShopReport& shop,
               const Output& output) {
    std::printf("%s\n%s, %g mm thick, %g mm wide; blank %.2f mm long, %.1f g\n", c.title.c_str(),
                c.material.title.c_str(), c.thickness, c.width, job.blank.length, job.mass_g);
    double wall = 0.0;
    for (const job::StepResult& step : job.steps) wall += step.wall_ms;
    print_table(documents::strokes_table(c, job));
    print_table(documents::bends_table(c, job));
    print_table(documents::clearances_table(c, job));
    if (!job.finished_angle.empty()) {
        print_table(documents::finished_table(c, job));
        std::printf(
            "Deviation of the finished profile from the drawing: at most %.2f mm on its flats, %.2f mm "
            "in its bends.\n",
            job.profile.worst_on_flats.off, job.profile.worst_in_bends.off);
        if (std::abs(job.fitted.length - job.blank.length) > worth_a_word)
            std::printf("A blank of %.2f mm gives the drawing's leg lengths.\n", job.fitted.length);
    }
    print_verdict(c, job, output);
    if (shop.cost_asked)
        std::printf(
            "\nIn a batch of %d, a part costs %s %s (see `overbend cost`) and takes %.1f s of press time.\n",
            shop.rates.batch, fixed(shop.cost.per_part(shop.rates.batch), 3).c_str(), shop.cost.money.c_str(),
            shop.cost.press_time);
    if (output.quiet) return;
    std::printf("\n%s\n", picture::brief_caution().c_str());
    std::printf("(%.0f ms for %s)\n", wall, counted(job.steps.size(), "stroke").c_str());
}

Exit check(const CheckOptions& options) {
    const Job job = run_job(options.file, options.out, options.output, job::Spread::worked_out);
    const std::string json = documents::results_json(job.c, job.result, job.shop);
    if (options.out) output::write_whole(make_folder(*options.out) / "results.json", json);
    if (options.output.json)
        std::cout << json;
    else
        print_job(job.c, job.result, job.shop, options.output);
    return verdict(job.c, job.result);
}

}  // namespace

void add_check(Program& app) {
    Command command = app.command("check", "Run the whole job: numbers and verdict");
    const auto options = std::make_shared<CheckOptions>();
    command.option("case", options->file, "The case file").required();
    command.option("--out", options->out, "Folder for results.json");
    add_output(command, options->output);
    command.footer("Example: overbend check cases/cable-hook/case.toml --out out/hook");
    command.runs([options] { return check(*options); });
}

}  // namespace overbend::commands
