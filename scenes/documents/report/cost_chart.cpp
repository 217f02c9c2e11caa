#include "scenes/documents/report/cost_chart.h"

namespace overbend::documents {

namespace {

chart::CostCurve cost_curve(const std::string& name, const shop::CostSheet& cost) {
    constexpr int most_parts = 1000000, points = 40;
    chart::CostCurve curve;
    curve.name = name;
    for (const int batch : shop::batches_up_to(most_parts, points))
        curve.points.push_back({1.0 * batch, cost.per_part(batch)});
    return curve;
}

}  // namespace

chart::CostOverBatch cost_over_batch_data(const files::Case& c, const job::ShopReport& shop) {
    chart::CostOverBatch chart;
    chart.title = "Cost of a part over the batch size";
    chart.money = shop.cost.money;
    chart.curves = {cost_curve(c.title, shop.cost)};
    if (!shop.against) return chart;
    const std::string& name = shop.against->name;
    chart.curves.push_back(
        cost_curve(name == c.title ? name + ", the alternative" : name, shop.against->cost));
    return chart;
}

}  // namespace overbend::documents
