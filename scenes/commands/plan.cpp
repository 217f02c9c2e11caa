// overbend plan: from the drawing to a case that makes it.

#include <iostream>
#include <memory>
#include <optional>

#include "render/output/whole_file.h"
#include "render/picture/profile_drawing.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/drawing_files.h"
#include "scenes/commands/job.h"
#include "scenes/commands/plan_print.h"
#include "scenes/documents/report/part_sheets.h"
#include "scenes/documents/results/plan_json.h"
#include "scenes/documents/results/results_json.h"
#include "scenes/files/case/write_case.h"
#include "scenes/job/plan/plan.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::commands {

namespace {

struct PlanCommand {
    std::string file;
    std::string out = "out/plan";
    int orders = 5;
    double clearance = 0.0;
    bool rack_only = false;
    double angle_deg = 0.1;
    double profile = 0.1;
    Output output;
};

job::PlanOptions options_of(const PlanCommand& given) {
    job::PlanOptions options;
    options.orders = given.orders;
    options.margin = given.clearance;
    options.rack_only = given.rack_only;
    options.fit.angle = given.angle_deg * degree;
    options.fit.profile = given.profile;
    if (!shows_progress(given.output)) return options;
    options.progress = [](const std::string& what) { std::cerr << what << " ...\n"; };
    return options;
}

std::string head_of(const files::Case& c, const job::PlanResult& plan) {
    std::string head = "Planned from " + c.file + ": bend lines, order, tools and stops.\n";
    head += "Estimates: check them with a trial bend.\n";
    for (const std::string& tool : plan.proposed) head += "Proposed " + tool + "\n";
    return head;
}

Exit plan(const PlanCommand& given) {
    const files::Case c = read_job_case(given.file, given.out, files::Needs::plan);
    const job::PlanResult result = job::plan_case(c, options_of(given));
    std::optional<std::filesystem::path> file;
    if (result.found) {
        file = make_folder(given.out) / "case.toml";
        picture::ProfileSheet sheet = documents::profile_sheet(result.planned, result.fit.job);
        sheet.remark += words("; every angle within %.3f degrees", result.fit.worst_angle / degree);
        write_sheet([&](int height) { return picture::draw_profile(sheet, height); }, file->parent_path(),
                    "profile");
        output::write_whole(file->parent_path() / "results.json",
                            documents::results_json(result.planned, result.fit.job));
        output::write_whole(*file, files::write_case(result.planned, head_of(c, result)));
    }
    if (given.output.json)
        std::cout << documents::plan_json(c, result);
    else if (!given.output.quiet)
        print_plan(c, result, file);
    return result.found && result.fit.meets ? Exit::done : Exit::verdict_no;
}

}  // namespace

void add_plan(Program& app) {
    Command command =
        app.command("plan", "Plan blank, tools, order and stops from the drawing; writes a case");
    const auto given = std::make_shared<PlanCommand>();
    command.option("case", given->file, "The case file; its steps are ignored").required();
    command
        .option("--out", given->out,
                "Folder for the completed case.toml, its results.json and the profile on the drawing")
        .shows_default();
    command.option("--orders", given->orders, "Number of orders to rank", whole_from_to(1, 50));
    command.option("--clearance", given->clearance, "minimum clearance in the search, mm",
                   from_to(0.0, 100.0, "mm"));
    command.flag("--rack-only", given->rack_only, "use only the tools of the case");
    command.option("--angle", given->angle_deg, "tolerance of the finished angles, degrees",
                   from_to(0.001, 45.0, "deg"));
    command.option("--profile", given->profile, "tolerance of the finished profile, mm",
                   from_to(0.001, 100.0, "mm"));
    add_output(command, given->output);
    command.footer("Example: overbend plan cases/cable-hook/case.toml --out out/plan");
    command.runs([given] { return plan(*given); });
}

}  // namespace overbend::commands
