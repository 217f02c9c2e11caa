#include "scenes/commands/shop_print.h"

#include <cstdio>

#include "scenes/documents/tables/job_tables.h"

namespace overbend::commands {

namespace {

// Springs that were chosen, as the case's file would have them.
void print_springs(const files::Case& c, const job::ToolInShop& t) {
    if (!t.springs || t.springs->given) return;
    const shop::ChosenSpring& s = t.springs->each;
    std::printf(
        "  for example '%s': spring = { wire_mm = %g, coil_mm = %g, turns = %g, shear_modulus_MPa = %g, "
        "count = "
        "%d, preload_N = %.1f }\n",
        c.tools[t.tool].name.c_str(), s.spring.wire, s.spring.coil_diameter, s.spring.turns,
        s.spring.shear_modulus, t.springs->count, s.force_start * t.springs->count);
}

void print_shared(const files::Case& c, const job::ShopReport& shop) {
    for (const job::SharedBlock& block : shop.shared)
        std::printf("'%s' serves %d strokes: %.2f kg of steel saved compared with separate blocks.\n",
                    c.tools[block.tool].name.c_str(), block.uses, block.saved_kg);
}

}  // namespace

void print_table(const documents::Table& table) {
    std::printf("\n%s", documents::table_text(table).c_str());
}

void print_tools(const files::Case& c, const job::ShopReport& shop) {
    std::printf("%s\nWhere the case gives no length, tools are as long as the strip is wide plus %.0f mm.\n",
                c.title.c_str(), job::tool_length(c, files::Tool{}) - c.width);
    print_table(documents::strength_table(c, shop));
    print_table(documents::making_table(c, shop));
    print_shared(c, shop);
    const documents::Table springs = documents::springs_table(c, shop);
    if (!springs.rows.empty()) print_table(springs);
    for (const job::ToolInShop& t : shop.tools) print_springs(c, t);
    print_findings(c, shop.findings);
}

void print_cost(const files::Case& c, const job::ShopReport& shop, const std::vector<int>& batches) {
    std::printf("%s\n", c.title.c_str());
    print_table(documents::cost_table(shop));
    print_table(documents::groups_table(shop, batches));
    print_table(documents::tool_costs_table(shop));
    print_shared(c, shop);
}

void print_verdict(const files::Case& c, const job::JobResult& job, const Output& output) {
    std::printf("\n%s\n", job::verdict_words(job).c_str());
    print_findings(c, output.quiet ? job::with(job.findings, Severity::stops) : job.findings);
}

void print_refusal(const files::Case& c, const job::JobResult& job) {
    if (!job.feasible()) print_verdict(c, job, {false, true});
}

void print_findings(const files::Case& c, const job::Findings& findings) {
    const std::vector<job::Findings> list = job::alike(c, job::by_severity(findings));
    for (std::size_t i = 0; i < list.size(); ++i) {
        const Finding& f = list[i].front();
        if (i == 0 || f.severity != list[i - 1].front().severity)
            std::printf("\n%s:\n", job::heading_of(f.severity));
        const bool sourced =
            job::facts_of(f.rule).group == job::RuleGroup::trade && f.severity != Severity::not_checked;
        std::printf("  - %s%s\n", job::sentence(c, list[i]).c_str(),
                    sourced ? (" [" + job::source_of(f) + "]").c_str() : "");
    }
}

}  // namespace overbend::commands
