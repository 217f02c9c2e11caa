#include "scenes/files/case/read_cost.h"

#include "scenes/files/case/describe.h"
#include "scenes/files/case/table_reader.h"

namespace overbend::files {

shop::CostRates usual_rates(const Case& job) {
    shop::CostRates rates;
    if (!job.press) return rates;
    rates.press_per_hour = job.press->price_per_hour.value_or(rates.press_per_hour);
    rates.idle_power = job.press->idle_power.value_or(rates.idle_power);
    return rates;
}

std::optional<shop::CostRates> read_cost(const StrictTable& top, const Case& job) {
    if (!top.has("cost")) return std::nullopt;
    CostTable table{{}, usual_rates(job)};
    read_into(top.table("cost", {}), table);
    return table.rates;
}

}  // namespace overbend::files
