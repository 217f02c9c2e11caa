#include "sim/shop/tool_cost.h"

#include <algorithm>

namespace overbend::shop {

namespace {

// Money per kg of heat treatment: the price, or what the least charge comes to.
double hardening_price(const CostRates& r, const std::vector<ToolFigures>& tools) {
    double mass = 0.0;
    for (const ToolFigures& t : tools)
        if (!t.bought && t.hardened) mass += t.stock.mass;
    return mass > 0.0 ? std::max(r.hardening_per_kg, r.hardening_least / mass) : r.hardening_per_kg;
}

Traced tool_cost(const CostRates& r, const ToolFigures& t, double hardening_per_kg) {
    if (t.bought) return {*t.bought, r.money, "its price", {{"its price", *t.bought, r.money}}};
    const double steel = t.steel_per_kg.value_or(r.tool_steel_per_kg);
    const double hardening = t.hardened ? hardening_per_kg : 0.0;
    const double grinding = t.hardened ? r.making.grinding : 0.0;
    const ToolStock& s = t.stock;
    return {
        (r.making.design + r.making.programming) * r.design_per_hour + s.block_mass * steel +
            s.milling_hours * r.milling_per_hour + s.erosion_hours * r.erosion_per_hour + s.mass * hardening +
            grinding * r.grinding_per_hour + r.making.fitting * r.fitting_per_hour,
        r.money,
        "(design + programs) x their hour + block x steel + milling x its hour + erosion x its hour + tool "
        "x heat treatment + grinding x its hour + fitting x its hour",
        {{"design", r.making.design, "h"},
         {"programs", r.making.programming, "h"},
         {"hour of design and programs", r.design_per_hour, r.money + "/h"},
         {"block", s.block_mass, "kg"},
         {"steel", steel, r.money + "/kg"},
         {"milling", s.milling_hours, "h"},
         {"hour of milling", r.milling_per_hour, r.money + "/h"},
         {"erosion", s.erosion_hours, "h"},
         {"hour of erosion", r.erosion_per_hour, r.money + "/h"},
         {"tool", s.mass, "kg"},
         {"heat treatment", hardening, r.money + "/kg"},
         {"grinding", grinding, "h"},
         {"hour of grinding", r.grinding_per_hour, r.money + "/h"},
         {"fitting", r.making.fitting, "h"},
         {"hour of fitting", r.fitting_per_hour, r.money + "/h"}}};
}

}  // namespace

Traced nothing(const std::string& money) {
    return {0.0, money, "nothing", {}};
}

std::vector<ToolCost> tool_costs(const CostRates& r, const std::vector<ToolFigures>& tools) {
    const double hardening = hardening_price(r, tools);
    std::vector<ToolCost> each;
    for (const ToolFigures& t : tools) each.push_back({t.name, tool_cost(r, t, hardening)});
    return each;
}

CostLine tools_line(const CostRates& r, const std::vector<ToolCost>& each) {
    Traced cost{0.0, r.money, "sum of the tools / batches that share them", {}};
    for (const ToolCost& t : each) {
        cost.value += t.cost.value;
        cost.inputs.push_back({t.name, t.cost.value, r.money});
    }
    cost.value /= r.tool_batches;
    cost.inputs.push_back({"batches that share them", 1.0 * r.tool_batches, ""});
    return {"tools", nothing(r.money), cost};
}

// A tool serves regrinds + 1 times the strokes to a regrind: so many regrinds and the tool itself.
CostLine wear_line(const CostRates& r, const JobFigures& job, const std::vector<ToolCost>& each) {
    if (r.regrind_strokes <= 0.0) return {"tool wear", nothing(r.money), nothing(r.money)};
    const double regrinding = r.regrinds * r.regrind * r.grinding_per_hour;
    Traced cost{
        0.0,
        r.money,
        "sum over the tools of its strokes / strokes to a regrind x (regrinds x time of one x hour of "
        "grinding + tool) / (regrinds + 1)",
        {{"strokes to a regrind", r.regrind_strokes, ""},
         {"regrinds", 1.0 * r.regrinds, ""},
         {"time of one", r.regrind, "h"},
         {"hour of grinding", r.grinding_per_hour, r.money + "/h"}}};
    for (std::size_t i = 0; i < each.size(); ++i) {
        const double strokes = job.tools[i].strokes, tool = each[i].cost.value;
        cost.value += strokes / r.regrind_strokes * (regrinding + tool) / (r.regrinds + 1.0);
        cost.inputs.push_back({"strokes of " + each[i].name, strokes, ""});
        cost.inputs.push_back({"tool " + each[i].name, tool, r.money});
    }
    return {"tool wear", cost, nothing(r.money)};
}

}  // namespace overbend::shop
