// What the shop has to say of a job, as parts of results.json.

#pragma once

#include <nlohmann/json_fwd.hpp>

#include "scenes/shop/shop.h"

namespace overbend::scenes {

nlohmann::ordered_json press_json(const Case& c, const ShopReport& shop);  // null without a press
nlohmann::ordered_json tools_json(const Case& c, const ShopReport& shop);
// At a batch of parts.
nlohmann::ordered_json cost_json(const Case& c, const ShopReport& shop, int batch);

}  // namespace overbend::scenes
