// Figures of press, tools and cost.

#include <imgui.h>

#include "scenes/window/panels/figure_tables.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

using ui::Ui;

Ui::Weight words_weight(shop::Verdict verdict) {
    return verdict == shop::Verdict::fine ? Ui::Weight::plain : Ui::Weight::alarm;
}

// "1.5 of 60.0 kN"
std::string against(const shop::Check& check) {
    const std::string end = check.unit.empty() ? "" : " " + check.unit;
    const int decimals = check.limit < 10.0 ? 2 : 1;
    return figure_words(check.figure, decimals) + " of " + figure_words(check.limit, decimals) + end;
}

FigureLine check_line(const shop::Check& check) {
    const std::string verdict =
        check.verdict == shop::Verdict::fine ? "" : std::string(", ") + shop::verdict_word(check.verdict);
    return {check.what + verdict, against(check), words_weight(check.verdict)};
}

std::string block_words(const shop::ToolStock& s) {
    return words("%.0f x %.0f x %.0f mm", s.block_wide, s.block_high, s.block_long);
}

std::vector<FigureLine> tool_lines(const RanJob& job, const job::ToolInShop& t) {
    const files::Tool& tool = job.c.tools[t.tool];
    std::vector<FigureLine> lines;
    lines.push_back({"steel", tool.make.steel.empty() ? "not given" : tool.make.steel});
    lines.push_back({"line load", figure_words(t.peak, 1) + " kN/m"});
    if (t.section) {
        const shop::SectionLoad& load = t.section->load;
        lines.push_back({"weakest section", figure_words(load.cut.thickness, 1) + " mm thick"});
        lines.push_back({"tension there", figure_words(load.tension, 0) + " MPa"});
        lines.push_back({"compression there", figure_words(load.compression, 0) + " MPa"});
    }
    if (t.contact) lines.push_back({"contact", figure_words(t.contact->contact.pressure, 0) + " MPa"});
    const std::optional<double> margin = job::steel_margin(job.c, t);
    const bool thin = margin && *margin < 1.0;
    lines.push_back({"safety margin", margin ? figure_words(*margin, 2) + " times" : "-",
                     thin ? Ui::Weight::alarm : Ui::Weight::plain});
    lines.push_back({"mass", figure_words(t.stock.mass, 2) + " kg"});
    lines.push_back({"block", t.made ? block_words(t.stock) : "bought"});
    if (t.springs)
        lines.push_back({t.springs->given ? "springs" : "springs, for example",
                         words("%d of %g mm wire", t.springs->count, t.springs->each.spring.wire)});
    return lines;
}

}  // namespace

void draw_press_figures(Ui& ui, const RanJob& job) {
    if (!job.c.press)
        return ui.words("The case names no press, so force and space are not checked.", Ui::Weight::muted);
    const files::Press& press = *job.c.press;
    draw_lines("press", {{press.title.empty() ? "press" : press.title,
                          figure_words(press.force, 0) + " kN, " + figure_words(press.stroke, 0) + " mm"}});
    for (const job::StrokeOnPress& s : job.shop.strokes) {
        const std::string name = words("%d ", s.step + 1) + job.c.steps[s.step].name;
        ui.words(name, Ui::Weight::heading);
        std::vector<FigureLine> lines;
        for (const shop::Check& check : s.checks) {
            const bool again = !lines.empty() && lines.back().words == check.what;
            lines.push_back(check_line(check));
            if (again) lines.back().words += ", minimum";  // a limit on either side
        }
        lines.push_back({"work", figure_words(s.demand.work, 2) + " J"});
        lines.push_back({"ram cycle", figure_words(s.cycle_s, 2) + " s"});
        draw_lines(name.c_str(), lines);
    }
}

void draw_tool_figures(Ui& ui, const RanJob& job) {
    if (job.shop.tools.empty()) return ui.words("No tool was loaded.", Ui::Weight::muted);
    for (const job::ToolInShop& t : job.shop.tools) {
        const std::string& name = job.c.tools[t.tool].name;
        ui.words(name, Ui::Weight::heading);
        draw_lines(name.c_str(), tool_lines(job, t));
    }
    ui.words("Stresses are nominal: at an inner corner they are higher, at a sharp one two or three times.",
             Ui::Weight::muted);
}

void draw_cost_figures(Ui& ui, const RanJob& job) {
    const shop::CostSheet& sheet = job.shop.cost;
    if (sheet.lines.empty()) return ui.words("No costs: the job was not run.", Ui::Weight::muted);
    const int batch = job.shop.rates.batch;
    const auto money = [&](double value, int decimals) {
        return figure_words(value, decimals) + " " + sheet.money;
    };
    draw_lines("cost", {{words("per part (batch of %d)", batch), money(sheet.per_part(batch), 3)},
                        {"whole batch", money(sheet.of_batch(batch), 2)},
                        {"press time per part", figure_words(sheet.press_time, 1) + " s"},
                        {"material used in the part", figure_words(100.0 * sheet.strip_yield, 1) + " %"}});
    ui.words("By group", Ui::Weight::heading);
    FigureTable table{{"group", "per\npart", "per\nbatch", words("part in\n%d", batch)}, {}};
    for (const shop::CostLine& line : sheet.lines)
        table.rows.push_back({line.group, figure_words(line.per_part.value, 4),
                              figure_words(line.per_batch.value, 2),
                              figure_words(line.per_part.value + line.per_batch.value / batch, 4)});
    table.rows.push_back({"all", figure_words(sheet.variable, 4), figure_words(sheet.fixed, 2),
                          figure_words(sheet.per_part(batch), 4)});
    draw_table("groups", table);
    if (!job.shop.cost_asked)
        ui.words("The case has no [cost] table, so common rates are used.", Ui::Weight::muted);
}

}  // namespace overbend::window
