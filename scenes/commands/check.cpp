// overbend check: the whole job of a case, numbers and verdict.

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
#include "scenes/job/run/job_rules.h"
#include "sim/counted.h"
#include "sim/units.h"

namespace overbend::commands {

namespace {

struct CheckOptions {
    std::string file;
    std::optional<std::string> out;
    Output output;
};

void print_step(const files::Case& c, const job::StepResult& step, int number) {
    const stroke::StrokeResult& s = step.stroke;
    std::printf("%2d  %-16s %9.3f %8.2f %9.1f %9s  %5.3f %5d\n", number, step.name.c_str(), s.stop_travel,
                s.peak_force * c.width / 1000.0, s.peak_force,
                step.least.tool < 0 ? "-" : fixed(step.least.distance, 2).c_str(), s.audit.residue_percent(),
                s.increments);
    if (s.outcome != stroke::Outcome::reached)
        std::printf("      %s: %s\n", stroke::outcome_words(s.outcome), s.reason.c_str());
    for (const std::string& w : step.warnings) std::printf("      warning: %s\n", w.c_str());
    for (const std::string& w : step.remarks) std::printf("      %s\n", w.c_str());
}

void print_bends(const files::Case& c, const job::JobResult& job) {
    std::printf("\n    %-16s %8s %8s %8s %10s %9s %8s %9s\n", "bend", "drawing", "loaded", "free",
                "springback", "finished", "radius", "thinnest");
    std::printf("    %-16s %8s %8s %8s %10s %9s %8s %9s\n", "", "deg", "deg", "deg", "deg", "deg", "mm",
                "mm");
    for (const job::StepResult& step : job.steps)
        for (const job::BendResult& b : step.bends) {
            const bool finished = !job.finished_angle.empty();
            std::printf("    %-16s %8.1f %8.2f %8.2f %10.2f %9s %8.2f %9.3f\n",
                        c.part.bends[b.bend].name.c_str(), b.drawing / degree, b.loaded / degree,
                        b.free / degree, b.springback() / degree,
                        finished ? fixed(job.finished_angle[b.bend] / degree, 2).c_str() : "-",
                        b.shape_free.inside_radius, b.shape_free.thickness);
        }
}

// Cautions of the trade's rules; what stops a job stands among the verdict's reasons.
void print_rules(const files::Case& c, const job::RuleReport& rules) {
    bool any = false;
    for (const plan::RuleFinding& f : rules.findings) {
        if (f.stops) continue;
        if (!any) std::printf("\nCautions from shop rules:\n");
        any = true;
        std::printf("  - %s: %s [%s]\n", job::place_words(c, f).c_str(), f.words.c_str(), f.source.c_str());
    }
    for (const std::string& what : rules.not_checked)
        std::printf("%sNot checked: %s.\n", any ? "" : "\n", what.c_str());
}

void print_job(const files::Case& c, const job::JobResult& job, const job::ShopReport& shop) {
    std::printf("%s\n%s, %g mm thick, %g mm wide; blank %.2f mm long, %.1f g\n\n", c.title.c_str(),
                c.material.title.c_str(), c.thickness, c.width, job.blank.length, job.mass_g);
    std::printf("    %-16s %9s %8s %9s %9s  %5s %5s\n", "step", "travel", "force", "force", "clearance",
                "audit", "incr.");
    std::printf("    %-16s %9s %8s %9s %9s  %5s\n", "", "mm", "kN", "kN/m", "mm", "%");
    int number = 0;
    double wall = 0.0;
    for (const job::StepResult& step : job.steps) {
        print_step(c, step, ++number);
        wall += step.wall_ms;
    }
    print_bends(c, job);
    if (!job.finished_angle.empty())
        std::printf(
            "\nDeviation of the finished profile from the drawing: at most %.2f mm on its flats, %.2f mm in "
            "its bends. A blank of %.2f mm gives the drawing's leg lengths.\n",
            job.profile.worst_on_flats.off, job.profile.worst_in_bends.off, job.fitted.length);
    std::printf("\n%s\n", job.findings.empty() ? "Feasible: no problems found." : "Not feasible:");
    for (const std::string& f : job.findings) std::printf("  - %s\n", f.c_str());
    print_rules(c, job.rules);
    print_shop(shop);
    std::printf("\n%s\n", picture::brief_caution().c_str());
    std::printf("(%.0f ms for %s)\n", wall, counted(job.steps.size(), "stroke").c_str());
}

void check(const CheckOptions& options, int& status) {
    const Job job = run_job(options.file, options.out, options.output);
    const std::string json = documents::results_json(job.c, job.result, job.shop);
    if (options.out) output::write_whole(make_folder(*options.out) / "results.json", json);
    if (options.output.json)
        std::cout << json;
    else if (!options.output.quiet)
        print_job(job.c, job.result, job.shop);
    std::fflush(stdout);
    status = static_cast<int>(verdict(job.result));
}

}  // namespace

void add_check(Program& app, int& status) {
    Command command = app.command("check", "Run the whole job: numbers and verdict");
    const auto options = std::make_shared<CheckOptions>();
    command.option("case", options->file, "The case file").required();
    command.option("--out", options->out, "Folder for results.json");
    add_output(command, options->output);
    command.footer("Example: overbend check cases/cable-hook/case.toml --out out/hook");
    command.callback([options, &status] { check(*options, status); });
}

}  // namespace overbend::commands
