#include "scenes/documents/study/study_json.h"

#include <nlohmann/json.hpp>

namespace overbend::documents {

namespace {

using nlohmann::ordered_json;

ordered_json share(const job::Share& s) {
    return {{"value", s.value}, {"low", s.low}, {"high", s.high}};
}

ordered_json or_null(const std::optional<double>& value) {
    return value ? ordered_json(*value) : ordered_json(nullptr);
}

ordered_json size_json(const StudyReport& r, std::size_t i) {
    const job::StudySize& size = r.sizes[i];
    const job::SizeScatter& s = r.result.sizes[i];
    const bool judged = size.judged();
    ordered_json from = ordered_json::array();
    for (std::size_t f = 0; f < s.importance.size(); ++f)
        from.push_back({{"input", r.plan->factors[f].name},
                        {"first_order", share(s.importance[f].first)},
                        {"total", share(s.importance[f].total)}});
    return {{"size", size.name},
            {"unit", size.unit},
            {"drawn", judged ? ordered_json(size.drawn) : ordered_json(nullptr)},
            {"tolerance", judged ? ordered_json(size.allowed) : ordered_json(nullptr)},
            {"mean", s.mean},
            {"deviation", s.deviation},
            {"least", s.least},
            {"low", s.low},
            {"median", s.middle},
            {"high", s.high},
            {"most", s.most},
            {"within", or_null(s.within)},
            {"cp", or_null(s.cp)},
            {"cpk", or_null(s.cpk)},
            {"importance", from}};
}

ordered_json stops_json(const StudyReport& r) {
    ordered_json stops = ordered_json::array();
    for (std::size_t s = 0; s < r.held->c.steps.size(); ++s) {
        const auto& stop = r.held->ram_stop[s];
        ordered_json one = {{"step", r.held->c.steps[s].name},
                            {"height_mm", stop ? ordered_json(*stop - r.plan->study.deeper[s]) : nullptr}};
        if (r.stops) one["advised_deeper_mm"] = stop ? ordered_json(r.stops->deeper[s]) : nullptr;
        stops.push_back(std::move(one));
    }
    return stops;
}

}  // namespace

ordered_json study_json(const StudyReport& r) {
    ordered_json sizes = ordered_json::array(), worth = ordered_json::array(), why = ordered_json::array(),
                 inputs = ordered_json::array();
    for (const job::StudyColumn& column : r.plan->columns)
        inputs.push_back({{"input", column.name}, {"nominal", column.nominal}});
    for (std::size_t i = 0; i < r.sizes.size(); ++i) sizes.push_back(size_json(r, i));
    for (const job::ToleranceWorth& w : r.worth)
        worth.push_back(
            {{"input", r.plan->factors[static_cast<std::size_t>(w.factor)].name},
             {"good", share(w.good)},
             {"effective_samples", w.samples},
             {"worth_per_part", r.held->cost_per_part > 0.0 ? ordered_json(w.per_part) : nullptr}});
    for (const auto& [reason, count] : r.result.why) why.push_back({{"reason", reason}, {"parts", count}});
    ordered_json all = {{"title", r.held->c.title},
                        {"rows", r.rows.size()},
                        {"samples", r.result.samples},
                        {"rows_not_solved", r.result.not_solved},
                        {"good", share(r.result.good)},
                        {"not_good", why},
                        {"inputs", inputs},
                        {"sizes", sizes},
                        {"stops", stops_json(r)}};
    if (r.stops) all["good_with_advised_stops"] = share(r.stops->then);
    all["half_the_scatter"] = worth;
    const bool costs = r.held->cost_per_part > 0.0;
    all["money"] = costs ? ordered_json(r.held->money) : nullptr;
    all["cost_per_part"] = costs ? ordered_json(r.held->cost_per_part) : nullptr;
    return all;
}

}  // namespace overbend::documents
