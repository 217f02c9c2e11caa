// What the shop has to say of a job, as parts of results.json.

#pragma once

#include <nlohmann/json_fwd.hpp>

#include "scenes/job/shop/shop.h"

namespace overbend::documents {

nlohmann::ordered_json press_json(const files::Case& c, const job::ShopReport& shop);  // null without a press
nlohmann::ordered_json tools_json(const files::Case& c, const job::ShopReport& shop);
// At a batch of parts.
nlohmann::ordered_json cost_json(const files::Case& c, const job::ShopReport& shop, int batch);

}  // namespace overbend::documents
