// What the shop has to say of a job, as parts of results.json.

#pragma once

#include <nlohmann/json_fwd.hpp>

#include "scenes/documents/tables/table.h"
#include "scenes/job/shop/shop.h"

namespace overbend::documents {

// A row of a table: what stands under the columns that have a name in JSON, figures not rounded.
nlohmann::ordered_json row_json(const Table& table, std::size_t row);

nlohmann::ordered_json press_json(const files::Case& c, const job::ShopReport& shop);  // null without a press
nlohmann::ordered_json tools_json(const files::Case& c, const job::ShopReport& shop);
// At a batch of parts.
nlohmann::ordered_json cost_json(const files::Case& c, const job::ShopReport& shop, int batch);

}  // namespace overbend::documents
