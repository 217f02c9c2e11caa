#include "scenes/files/case/read_cost.h"

#include <algorithm>

#include "scenes/files/case/strict_table.h"

namespace overbend::files {

namespace {

constexpr Range money = from_to(0.0, 1e9);
constexpr Range seconds = from_to(0.0, 1e5);
constexpr Range rate = above_to(0.0, 1e6);
constexpr Range percent = from_to(0.0, 100.0);

double share_or(const StrictTable& table, const char* key, double usual, Range range) {
    return table.has(key) ? table.number(key, range) / 100.0 : usual;
}

void read_strip(const StrictTable& table, shop::CostRates& r) {
    r.strip_per_kg = table.number_or("strip_price_per_kg", r.strip_per_kg, money);
    r.scrap_per_kg = table.number_or("scrap_price_per_kg", r.scrap_per_kg, money);
    r.gap = table.number_or("gap_mm", r.gap, from_to(0.0, 1000.0));
    r.end_scrap = share_or(table, "end_scrap_percent", r.end_scrap, from_to(0.0, 90.0));
    if (table.has("sheet_mm")) {
        const std::vector<double> sides = table.numbers("sheet_mm", above_to(0.0, 20000.0));
        if (sides.size() != 2)
            table.complain("sheet_mm", std::to_string(sides.size()) + " numbers are given",
                           "give [length, width], the length along the rolling direction");
        r.sheet = shop::Sheet{sides[0], sides[1]};
    }
    r.cutting_speed = table.number_or("cutting_mm_per_s", r.cutting_speed, rate);
    r.pierce = table.number_or("pierce_s", r.pierce, seconds);
    r.cutting_per_hour = table.number_or("cutting_price_per_h", r.cutting_per_hour, money);
}

void read_work(const StrictTable& table, shop::CostRates& r) {
    r.lay_in = table.number_or("lay_in_s", r.lay_in, seconds);
    r.press_per_hour = table.number_or("press_price_per_h", r.press_per_hour, money);
    r.worker_per_hour = table.number_or("worker_price_per_h", r.worker_per_hour, money);
    r.inspection = table.number_or("inspection_s", r.inspection, seconds);
    r.inspected = share_or(table, "inspected_percent", r.inspected, percent);
    r.storage = table.number_or("storage_price_per_month", r.storage, money);
    r.storage_months = table.number_or("storage_months", r.storage_months, from_to(0.0, 1200.0));
    r.energy_per_kWh = table.number_or("energy_price_per_kWh", r.energy_per_kWh, money);
    r.idle_power = table.number_or("idle_kW", r.idle_power, from_to(0.0, 1e4));
    r.efficiency = share_or(table, "efficiency_percent", r.efficiency, above_to(0.0, 100.0));
}

void read_tool_making(const StrictTable& table, shop::CostRates& r) {
    r.tool_steel_per_kg = table.number_or("tool_steel_price_per_kg", r.tool_steel_per_kg, money);
    r.making.allowance = table.number_or("block_allowance_mm", r.making.allowance, from_to(0.0, 100.0));
    r.making.milling = table.number_or("milling_cm3_per_min", r.making.milling, rate);
    r.making.erosion = table.number_or("erosion_mm2_per_min", r.making.erosion, rate);
    r.making.fitting = table.number_or("fitting_h", r.making.fitting, from_to(0.0, 1e4));
    r.milling_per_hour = table.number_or("milling_price_per_h", r.milling_per_hour, money);
    r.erosion_per_hour = table.number_or("erosion_price_per_h", r.erosion_per_hour, money);
    r.fitting_per_hour = table.number_or("fitting_price_per_h", r.fitting_per_hour, money);
    r.hardening_per_kg = table.number_or("hardening_price_per_kg", r.hardening_per_kg, money);
    r.tool_batches = table.whole_number_or("tool_batches", r.tool_batches, 1, 100000);
}

}  // namespace

shop::CostRates usual_rates(const Case& job) {
    shop::CostRates rates;
    if (!job.press) return rates;
    rates.press_per_hour = job.press->price_per_hour.value_or(rates.press_per_hour);
    rates.idle_power = job.press->idle_power.value_or(rates.idle_power);
    return rates;
}

const std::vector<std::string>& cost_keys() {
    static const Words keys = {"money",
                               "batch",
                               "strip_price_per_kg",
                               "scrap_price_per_kg",
                               "gap_mm",
                               "end_scrap_percent",
                               "sheet_mm",
                               "cutting_mm_per_s",
                               "pierce_s",
                               "cutting_price_per_h",
                               "lay_in_s",
                               "press_price_per_h",
                               "worker_price_per_h",
                               "tool_steel_price_per_kg",
                               "block_allowance_mm",
                               "milling_cm3_per_min",
                               "erosion_mm2_per_min",
                               "fitting_h",
                               "milling_price_per_h",
                               "erosion_price_per_h",
                               "fitting_price_per_h",
                               "hardening_price_per_kg",
                               "tool_batches",
                               "inspection_s",
                               "inspected_percent",
                               "storage_price_per_month",
                               "storage_months",
                               "energy_price_per_kWh",
                               "idle_kW",
                               "efficiency_percent"};
    return keys;
}

std::optional<shop::CostRates> read_cost(const StrictTable& top, const Case& job) {
    if (!top.has("cost")) return std::nullopt;
    const StrictTable table = top.table("cost", cost_keys());
    shop::CostRates rates = usual_rates(job);
    rates.money = table.text_or("money", rates.money);
    rates.batch = table.whole_number_or("batch", rates.batch, 1, 100000000);
    read_strip(table, rates);
    read_work(table, rates);
    read_tool_making(table, rates);
    return rates;
}

}  // namespace overbend::files
