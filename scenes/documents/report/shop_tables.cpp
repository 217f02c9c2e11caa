// Press, tools and cost on a job's page: what the shop's look at the job came to, as tables.

#include <algorithm>

#include "render/report/inline_svg.h"
#include "scenes/documents/report/cost_chart.h"
#include "scenes/documents/report/page_parts.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

constexpr chart::ChartSize cost_chart{960, 520};

void add_press(const files::Case& c, const job::ShopReport& shop, report::PageShop& to) {
    if (!c.press) return;
    double cycles = 0.0;
    for (const job::StrokeOnPress& s : shop.strokes) cycles += s.cycle_s;
    to.press_words = {words("The press is '%s', rated at %g kN, with a stroke of %g mm. ",
                            c.press->title.c_str(), c.press->force, c.press->stroke) +
                      words("Its ram moves for %.1f s per part.", cycles)};
    to.press_tables = {page_table(press_checks_table(c, shop, Checks::tightest)),
                       page_table(press_strokes_table(c, shop))};
}

bool is_looked_at(const files::Case& c, const job::ToolInShop& t) {
    return c.tools[t.tool].make.card.has_value() || c.tools[t.tool].make.rating.has_value();
}

void add_tools(const files::Case& c, const job::ShopReport& shop, report::PageShop& to) {
    const Table springs = springs_table(c, shop);
    if (!springs.rows.empty()) to.tool_tables = {page_table(springs)};
    const bool any = std::any_of(shop.tools.begin(), shop.tools.end(),
                                 [&](const job::ToolInShop& t) { return is_looked_at(c, t); });
    if (!any) return;
    for (const job::SharedBlock& block : shop.shared)
        to.tool_words.push_back(
            words("'%s' serves %d strokes: %.2f kg of steel saved compared with separate blocks.",
                  c.tools[block.tool].name.c_str(), block.uses, block.saved_kg));
    to.tool_tables.insert(to.tool_tables.begin(),
                          {page_table(strength_table(c, shop)), page_table(making_table(c, shop))});
}

// "mass of the blank x price of the strip; mass of the blank 0.031 kg, ..."
std::string trace_words(const shop::Traced& t) {
    std::string inputs;
    for (const shop::TracedInput& in : t.inputs)
        inputs += (inputs.empty() ? "" : ", ") + in.name + words(" %.5g", in.value) +
                  (in.unit.empty() ? "" : " " + in.unit);
    return words("%.5g = ", t.value) + t.formula + (inputs.empty() ? "" : "; with " + inputs) + ".";
}

void add_cost(const files::Case& c, const job::ShopReport& shop, report::PageShop& to) {
    if (!shop.cost_asked && !shop.against) return;
    const shop::CostSheet& cost = shop.cost;
    const int batch = shop.rates.batch;
    const char* const money = cost.money.c_str();
    if (shop.against)
        to.cost_words.push_back("Alternative: " + shop.against->name + ". " +
                                capital(job::break_even_words("this job", cost, *shop.against)));
    to.cost = {
        report::inline_svg(
            chart::draw_cost_over_batch(cost_over_batch_data(c, shop), cost_chart, picture::Theme::light),
            words("Cost of a part over the batch size, falling from %.2f %s for a single part to %.3f %s of "
                  "a batch of %d",
                  cost.per_part(1), money, cost.per_part(batch), money, batch)),
        "Cost of a part over the batch size: tools and setting up are spread over more parts. Both axes are "
        "logarithmic."};
    to.cost_tables = {page_table(cost_table(shop)), page_table(groups_table(shop, {batch})),
                      page_table(tool_costs_table(shop))};
    for (const shop::CostLine& line : cost.lines) {
        if (!line.per_part.formula.empty())
            to.traces.push_back({capital(line.group) + ", a part", trace_words(line.per_part)});
        if (!line.per_batch.formula.empty())
            to.traces.push_back({capital(line.group) + ", a batch", trace_words(line.per_batch)});
    }
    for (const shop::ToolCost& t : cost.tools)
        to.traces.push_back({"Tool '" + t.name + "'", trace_words(t.cost)});
}

}  // namespace

void add_shop(const files::Case& c, const job::ShopReport& shop, report::Page& page) {
    add_press(c, shop, page.shop);
    add_tools(c, shop, page.shop);
    add_cost(c, shop, page.shop);
    const auto told = [&](Severity severity) {
        std::vector<std::string> lines = job::sentences(c, job::with(shop.findings, severity));
        for (std::string& line : lines) line = capital(line) + ".";
        return lines;
    };
    page.shop.cautions = told(Severity::caution);
    page.shop.not_checked = told(Severity::not_checked);
}

}  // namespace overbend::documents
