// Order, tools, angles, forces, clearances and rules on a job's page, as tables.

#include <set>

#include "scenes/documents/report/page_parts.h"
#include "scenes/documents/tables/tool_words.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

report::Table tools_table(const files::Case& c) {
    std::set<int> used;
    for (const files::Step& step : c.steps)
        for (const int tool : step.tools()) used.insert(tool);
    report::Table table{"Tools", {{"Tool", "", false}, {"Kind", "", false}, {"Figures", "", false}}, {}};
    for (const int k : used)
        table.rows.push_back({"'" + c.tools[k].name + "'", kind_name(c.tools[k]), figures_words(c.tools[k])});
    return table;
}

// As the page writes it: degrees as a sign, a true minus.
std::string on_page(std::string text, bool is_number) {
    if (text == "-") return "\u2013";
    return is_number && text[0] == '-' ? "\u2212" + text.substr(1) : text;
}

}  // namespace

report::Table page_table(const Table& table) {
    report::Table page{table.title, {}, {}};
    for (const Column& column : table.columns)
        page.columns.push_back(
            {column.name, column.unit == "deg" ? "\u00b0" : column.unit, column.decimals != in_words});
    for (const std::vector<Cell>& row : table.rows) {
        page.rows.emplace_back();
        for (std::size_t i = 0; i < row.size(); ++i)
            page.rows.back().push_back(on_page(printed(table.columns[i], row[i]), row[i].number.has_value()));
    }
    for (const std::string& note : table.notes) page.note += (page.note.empty() ? "" : " ") + note;
    return page;
}

void add_order(const files::Case& c, const job::JobResult& job, report::Page& page) {
    page.order_tables = {page_table(order_table(c, job)), tools_table(c)};
}

void add_results(const files::Case& c, const job::JobResult& job, report::Page& page) {
    page.result_tables = {page_table(bends_table(c, job)), page_table(strokes_table(c, job)),
                          page_table(clearances_table(c, job))};
    page.result_tables[1].note +=
        c.press ? words(" The press '%s' is rated at %g kN.", c.press->title.c_str(), c.press->force)
                : std::string(" The case names no press.");
}

void add_rules(const files::Case& c, const job::JobResult& job, report::Page& page) {
    const job::Findings of_trade = job::of_group(job.findings, job::RuleGroup::trade);
    const job::Findings found =
        job::those(of_trade, [](const Finding& f) { return f.severity != Severity::not_checked; });
    page.rule_words = {
        found.empty()
            ? "Rules checked: minimum inside radius, outer-fibre strain, holes near a bend, die opening, "
              "minimum flange, return flanges, angles within reach of the tools. No findings."
            : "The job was also checked against shop rules. They are less exact than the mechanics and come "
              "from experience. Findings:"};
    for (const Finding& f : job::with(of_trade, Severity::not_checked))
        page.rule_words.push_back("Not checked: " + job::sentence(c, f) + ".");
    if (!found.empty()) page.rule_tables = {page_table(rules_table(c, job))};
}

}  // namespace overbend::documents
