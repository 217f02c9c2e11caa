#include "scenes/files/case/write_cost.h"

#include "scenes/files/case/read_cost.h"

namespace overbend::files {

namespace {

// A share as the per cent that the reader makes exactly that of.
void share_unless(Entries& entries, double usual, const char* key, double share) {
    if (share == usual) return;
    entries.number(key, roundest(100.0 * share, [&](double percent) { return percent / 100.0 == share; }));
}

void strip_entries(Entries& e, const shop::CostRates& r, const shop::CostRates& usual) {
    e.number_unless(usual.strip_per_kg, "strip_price_per_kg", r.strip_per_kg);
    e.number_unless(usual.scrap_per_kg, "scrap_price_per_kg", r.scrap_per_kg);
    e.number_unless(usual.gap, "gap_mm", r.gap);
    share_unless(e, usual.end_scrap, "end_scrap_percent", r.end_scrap);
    if (r.sheet) e.as_is("sheet_mm", numbers_text({r.sheet->length, r.sheet->width}));
    e.number_unless(usual.cutting_speed, "cutting_mm_per_s", r.cutting_speed);
    e.number_unless(usual.pierce, "pierce_s", r.pierce);
    e.number_unless(usual.cutting_per_hour, "cutting_price_per_h", r.cutting_per_hour);
}

void work_entries(Entries& e, const shop::CostRates& r, const shop::CostRates& usual) {
    e.number_unless(usual.lay_in, "lay_in_s", r.lay_in);
    e.number_unless(usual.press_per_hour, "press_price_per_h", r.press_per_hour);
    e.number_unless(usual.worker_per_hour, "worker_price_per_h", r.worker_per_hour);
    e.number_unless(usual.inspection, "inspection_s", r.inspection);
    share_unless(e, usual.inspected, "inspected_percent", r.inspected);
    e.number_unless(usual.storage, "storage_price_per_month", r.storage);
    e.number_unless(usual.storage_months, "storage_months", r.storage_months);
    e.number_unless(usual.energy_per_kWh, "energy_price_per_kWh", r.energy_per_kWh);
    e.number_unless(usual.idle_power, "idle_kW", r.idle_power);
    share_unless(e, usual.efficiency, "efficiency_percent", r.efficiency);
}

void tool_entries(Entries& e, const shop::CostRates& r, const shop::CostRates& usual) {
    e.number_unless(usual.tool_steel_per_kg, "tool_steel_price_per_kg", r.tool_steel_per_kg);
    e.number_unless(usual.making.allowance, "block_allowance_mm", r.making.allowance);
    e.number_unless(usual.making.milling, "milling_cm3_per_min", r.making.milling);
    e.number_unless(usual.making.erosion, "erosion_mm2_per_min", r.making.erosion);
    e.number_unless(usual.making.fitting, "fitting_h", r.making.fitting);
    e.number_unless(usual.milling_per_hour, "milling_price_per_h", r.milling_per_hour);
    e.number_unless(usual.erosion_per_hour, "erosion_price_per_h", r.erosion_per_hour);
    e.number_unless(usual.fitting_per_hour, "fitting_price_per_h", r.fitting_per_hour);
    e.number_unless(usual.hardening_per_kg, "hardening_price_per_kg", r.hardening_per_kg);
    if (r.tool_batches != usual.tool_batches) e.whole("tool_batches", r.tool_batches);
}

}  // namespace

Entries cost_entries(const Case& job) {
    Entries entries;
    const shop::CostRates usual = usual_rates(job);
    const shop::CostRates& rates = *job.cost;
    if (rates.money != usual.money) entries.text("money", rates.money);
    entries.whole("batch", rates.batch);  // always, so that the table is there
    strip_entries(entries, rates, usual);
    work_entries(entries, rates, usual);
    tool_entries(entries, rates, usual);
    return entries;
}

}  // namespace overbend::files
