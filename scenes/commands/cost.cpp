// overbend cost: what a part costs, over the size of the batch, and when another way is cheaper.

#include <algorithm>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "render/output/whole_file.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/drawing_files.h"
#include "scenes/commands/job.h"
#include "scenes/commands/shop_print.h"
#include "scenes/documents/report/cost_chart.h"
#include "scenes/documents/results/shop_json.h"
#include "scenes/files/reading/letters.h"

namespace overbend::commands {

namespace {

using nlohmann::ordered_json;

struct CostOptions {
    std::string file;
    std::vector<int> batches;
    std::optional<std::string> against, out;
    Output output;
};

// A job whose strokes came through: else it has no cost.
Job solved_job(const std::string& file, const CostOptions& options) {
    Job job = run_job(file, options.out, options.output);
    require_cost(job);
    return job;
}

std::vector<int> batches_of(const CostOptions& options, const Job& job) {
    std::vector<int> batches = options.batches;
    if (batches.empty()) batches = {1, 10, 100, 1000, 10000, job.shop.rates.batch};
    std::sort(batches.begin(), batches.end());
    batches.erase(std::unique(batches.begin(), batches.end()), batches.end());
    return batches;
}

const Job& cheaper_above(const shop::BreakEven& at, const Job& job, const Job& other) {
    return at.cheaper_above == shop::BreakEven::Above::first ? job : other;
}

ordered_json against_json(const Job& job, const Job& other) {
    const std::optional<shop::BreakEven> at = shop::break_even(job.shop.cost, other.shop.cost);
    ordered_json result = {{"case", files::shown_letters(other.c.file)},
                           {"title", other.c.title},
                           {"cost", documents::cost_json(other.c, other.shop, job.shop.rates.batch)}};
    result["break_even_batch"] = at ? ordered_json(at->batch) : ordered_json(nullptr);
    const Job& wins = at ? cheaper_above(*at, job, other)
                         : (job.shop.cost.per_part(1e9) <= other.shop.cost.per_part(1e9) ? job : other);
    const bool both = job.result.feasible() && other.result.feasible();
    result["verdict"] = job::verdict_words(other.result);
    result["cheaper_for_large_batches"] =
        both ? ordered_json(files::shown_letters(wins.c.file)) : ordered_json(nullptr);
    return result;
}

void print_against(const Job& job, const Job& other, const std::vector<int>& batches) {
    std::printf("\nCompared with:\n\n");
    print_cost(other.c, other.shop, batches);
    const auto refused = [](const Job& j) {
        if (!j.result.feasible())
            std::printf("\n'%s': %s It is no alternative.\n", j.c.file.c_str(),
                        job::verdict_words(j.result).c_str());
        return !j.result.feasible();
    };
    const bool first = refused(job), second = refused(other);
    if (!first && !second)
        std::printf(
            "\n%s\n",
            job::break_even_words(job.c.file, job.shop.cost, {other.c.file, other.shop.cost}).c_str());
}

ordered_json whole_json(const Job& job, const std::optional<Job>& other, const std::vector<int>& batches) {
    ordered_json result = {
        {"format", 2}, {"title", job.c.title}, {"verdict", job::verdict_words(job.result)}};
    result["findings"] = job::sentences(job.c, job::with(job.result.findings, Severity::stops));
    result["cost"] = documents::cost_json(job.c, job.shop, job.shop.rates.batch);
    ordered_json over = ordered_json::array();
    for (const int batch : batches)
        over.push_back({{"batch", batch},
                        {"per_part", job.shop.cost.per_part(batch)},
                        {"of_batch", job.shop.cost.of_batch(batch)}});
    result["over_batch"] = over;
    result["against"] = other ? against_json(job, *other) : ordered_json(nullptr);
    return result;
}

Exit cost(const CostOptions& options) {
    Job job = solved_job(options.file, options);
    std::optional<Job> other;
    if (options.against) other = add_alternative(job, *options.against, options.out, options.output);
    const std::vector<int> batches = batches_of(options, job);
    const ordered_json json = whole_json(job, other, batches);
    if (options.out) {
        const chart::CostOverBatch chart = documents::cost_over_batch_data(job.c, job.shop);
        const std::filesystem::path folder = make_folder(*options.out);
        write_sheet(
            [&](int height) {
                const chart::ChartSize size{height * 297 / 210, height};
                return chart::draw_cost_over_batch(chart, size, picture::Theme::light);
            },
            folder, "cost");
        output::write_whole(folder / "cost.json", json.dump(1) + "\n");
    }
    if (options.output.json) {
        print_json(json);
    } else {
        print_refusal(job.c, job.result);
        print_cost(job.c, job.shop, batches);
        if (other) print_against(job, *other, batches);
    }
    return verdict(job.c, job.result);
}

}  // namespace

void add_cost(Program& app) {
    Command command = app.command("cost", "Cost of a part over the batch size, item by item");
    const auto options = std::make_shared<CostOptions>();
    command.option("case", options->file, "The case file").required();
    command
        .option("--batch", options->batches,
                "batch sizes, such as 1,100,5000; default: 1 to 10000 and the case's own")
        .with_commas()
        .check(whole_from_to(1, 100000000));
    command.option("--against", options->against,
                   "another case of the same part; finds the batch size from which it is cheaper");
    command.option("--out", options->out, "Folder for cost.json, cost.svg, cost.pdf and cost.png");
    add_output(command, options->output);
    command.footer("Example: overbend cost cases/cable-hook/case.toml --batch 100,5000 --out out/cost");
    command.runs([options] { return cost(*options); });
}

}  // namespace overbend::commands
