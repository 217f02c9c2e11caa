// overbend plan: from the drawing to a case that makes it.

#include <cstdio>
#include <iostream>
#include <memory>
#include <optional>
#include <string>

#include "render/output/whole_file.h"
#include "render/picture/cautions.h"
#include "render/picture/profile_drawing.h"
#include "scenes/commands/case_place.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/drawing_files.h"
#include "scenes/commands/job.h"
#include "scenes/commands/options.h"
#include "scenes/commands/shop_print.h"
#include "scenes/documents/report/part_sheets.h"
#include "scenes/documents/results/plan_json.h"
#include "scenes/documents/results/results_json.h"
#include "scenes/documents/tables/job_tables.h"
#include "scenes/files/case/write_case.h"
#include "scenes/files/reading/letters.h"
#include "scenes/job/plan/plan.h"
#include "sim/counted.h"
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
    bool overwrite = false;
    Output output;
};

job::PlanOptions options_of(const PlanCommand& given) {
    job::PlanOptions options;
    options.orders = given.orders;
    options.margin = given.clearance;
    options.rack_only = given.rack_only;
    if (!shows_progress(given.output)) return options;
    options.progress = [](const std::string& what) { std::cerr << what << " ...\n"; };
    return options;
}

std::string head_of(const files::Case& c, const job::PlanResult& plan) {
    std::string head = head_line("plan") + "Planned from " + files::shown_letters(c.file) +
                       ": bend lines, order, tools and stops.\n";
    head += "Estimates: check them with a trial bend.\n";
    for (const std::string& tool : plan.proposed) head += "Proposed " + tool + "\n";
    if (!plan.fit.meets) head += "NOT WITHIN TOLERANCE; `check` refuses it:\n";
    for (const std::string& why : plan.fit.why_not) head += "  " + why + "\n";
    return head;
}

// "lip > hook (down) > shelf (turned)"
std::string order_words(const job::RankedOrder& order) {
    std::string words;
    bool face_down = false, turned = false, first = true;
    for (const files::Step& s : order.steps) {
        const bool down = s.face == files::Face::down, right = s.first == files::First::right;
        std::string how;
        if (first ? down : down != face_down) how += down ? "face down" : "face up";
        if (first ? right : right != turned)
            how += std::string(how.empty() ? "" : ", ") + (right ? "right end first" : "left end first");
        words += (first ? "" : " > ") + s.name + (how.empty() ? "" : " (" + how + ")");
        face_down = down, turned = right, first = false;
    }
    return words;
}

void print_orders(const job::PlanResult& plan) {
    if (plan.ranked.empty()) return;
    documents::Table table{
        "",
        {{"rank", "", 0},
         {"seconds", "", 0},
         {"strokes", "", 0},
         {"turns", "", 0},
         {"flips", "", 0},
         {"tools", "", 0},
         {"gauge", "", 0},
         {"slides", "", 0},
         {"verdict"},
         {"order"}},
        {},
        {"Seconds: total of the times in the case's [handling]; the first set-up counts as a "
         "change of tools and gauge."}};
    for (std::size_t i = 0; i < plan.ranked.size(); ++i) {
        const job::RankedOrder& o = plan.ranked[i];
        const plan::OrderWork& w = o.order.work;
        table.rows.push_back({1.0 + static_cast<double>(i), o.order.seconds, 1.0 * w.strokes, 1.0 * w.turns,
                              1.0 * w.flips, 1.0 * w.tool_changes, 1.0 * w.gauge_changes, 1.0 * w.slides,
                              static_cast<int>(i) == plan.chosen ? "chosen" : job::verdict_word(o.verdict),
                              order_words(o)});
        if (o.words.empty()) continue;
        table.rows.push_back(std::vector<documents::Cell>(9, ""));
        table.rows.back().emplace_back(o.words);
    }
    print_table(table);
}

void print_fit(const files::Case& c, const job::PlanResult& plan) {
    const job::Fit& fit = plan.fit;
    std::printf("\nBlank %.2f mm long (DIN 6935: %.2f); bend lines at", fit.job.blank.length,
                job::developed_length(c, job::din_allowance));
    for (const double line : fit.job.blank.bend_line) std::printf(" %.2f", line);
    std::printf(" mm; fitted in %s.\n", counted(static_cast<std::size_t>(fit.runs), "run").c_str());
}

void print_plan(const files::Case& c, const job::PlanResult& plan,
                const std::optional<std::filesystem::path>& file) {
    std::printf("%s\n%s, %g mm thick, %g mm wide; %s\n", c.title.c_str(), c.material.title.c_str(),
                c.thickness, c.width, counted(c.part.bends.size(), "bend").c_str());
    std::printf("Search: %s checked by geometry, after %s of earlier bends\n",
                counted(static_cast<std::size_t>(plan.asked), "stroke").c_str(),
                counted(static_cast<std::size_t>(plan.sets), "set").c_str());
    print_list("Proposed tools:", plan.proposed);
    print_orders(plan);
    if (plan.found) {
        print_table(documents::order_table(plan.planned, plan.fit.job));
        print_table(documents::bends_table(plan.planned, plan.fit.job));
        print_table(documents::finished_table(plan.planned, plan.fit.job));
        print_fit(c, plan);
        print_list("Changes made by the planner:", plan.fit.changed_tools);
    }
    std::vector<std::string> rejected;
    for (const job::Rejected& r : job::grouped(plan.rejected)) rejected.push_back(r.what + ": " + r.why);
    print_list("Rejected:", rejected);
    if (!plan.found) {
        print_list("No plan found for this part:", plan.reasons);
        print_list("Adding these tools would make it possible:", plan.would_help);
    } else {
        print_list("The drawing is not met:", plan.fit.why_not);
        std::printf("\n%s %s\n",
                    plan.fit.meets ? "The drawing is met; the completed case is"
                                   : "`check` would refuse this; the nearest that was found is",
                    file->string().c_str());
    }
    std::printf("\n%s\n", picture::brief_caution().c_str());
}

Exit plan(const PlanCommand& given) {
    const files::Case c = read_job_case(given.file, given.out, files::Needs::plan);
    const job::PlanResult result = job::plan_case(c, options_of(given));
    std::optional<std::filesystem::path> file;
    if (result.found) {
        file = place_for_case(c, make_folder(given.out), result.fit.meets ? "case" : "nearest", "planned",
                              given.overwrite ? Overwrite::any : Overwrite::own);
        const picture::ProfileSheet sheet = documents::profile_sheet(result.planned, result.fit.job);
        write_sheet([&](int height) { return picture::draw_profile(sheet, height); }, file->parent_path(),
                    "profile");
        output::write_whole(file->parent_path() / "results.json",
                            documents::results_json(result.planned, result.fit.job));
        write_case_file(*file, result.planned, head_of(c, result));
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
                "Folder for the completed case.toml (nearest.toml when the drawing is not met), its "
                "results.json and the profile on the drawing")
        .shows_default();
    command.option("--orders", given->orders, "Number of orders to rank", whole_from_to(1, 50));
    command.option("--clearance", given->clearance, "minimum clearance in the search, mm",
                   from_to(0.0, 100.0, "mm"));
    command.flag("--rack-only", given->rack_only, "use only the tools of the case");
    add_overwrite(command, given->overwrite);
    add_output(command, given->output);
    command.footer("Example: overbend plan cases/cable-hook/case.toml --out out/plan");
    command.runs([given] { return plan(*given); });
}

}  // namespace overbend::commands
