#include "scenes/job/plan/price_of_order.h"

#include <set>

#include "scenes/files/case/read_shop.h"
#include "scenes/files/case/tool_outline.h"
#include "scenes/job/shop/shop.h"

namespace overbend::job {

namespace {

constexpr double steel_density = 7850.0;  // kg/m3

// Of a tool that is made of no particular steel.
shop::ToolFigures figures_of(const files::Case& c, const files::Tool& tool, const shop::CostRates& rates) {
    shop::ToolFigures figures;
    figures.name = tool.name;
    figures.stock =
        shop::stock_of(files::tool_outline(tool, 1), tool_length(c, tool), steel_density, rates.making);
    return figures;
}

}  // namespace

double price_of_order(const Attempt& attempt, const plan::Order& order, int given_tools) {
    const files::Case& c = attempt.c;
    const shop::CostRates rates = c.cost ? *c.cost : files::usual_rates(c);
    std::set<int> made;
    for (const files::Step& step : attempt.steps_of(order))
        for (const int tool : step.tools())
            if (tool >= given_tools) made.insert(tool);
    shop::JobFigures figures;
    for (const int tool : made) figures.tools.push_back(figures_of(c, c.tools[tool], rates));
    double price = 0.0;
    for (const shop::ToolCost& tool : shop::cost_sheet(rates, figures).tools) price += tool.cost.value;

    const files::Handling& h = c.handling;
    const plan::OrderWork& w = order.work;
    const double of_a_part = w.strokes * h.stroke + w.turns * h.turn + w.flips * h.flip + w.slides * h.slide;
    const double of_a_batch = w.tool_changes * h.tool_change + w.gauge_changes * h.gauge_change;
    constexpr double second = 1.0 / 3600.0;  // h
    return price +
           second * (rates.press_per_hour + rates.worker_per_hour) * (rates.batch * of_a_part + of_a_batch);
}

}  // namespace overbend::job
