// Tables of the shop for reading: tools and what they bear, costs over batches.

#pragma once

#include <vector>

#include "scenes/job/shop/shop.h"

namespace overbend::commands {

void print_tools(const files::Case& c, const job::ShopReport& shop);

// Group by group for a part and a batch, and a part's cost at these batches.
void print_cost(const files::Case& c, const job::ShopReport& shop, const std::vector<int>& batches);

// A line or two for the whole job: cycles, thin margins, what was not looked at, the cost at the case's
// batch.
void print_shop(const job::ShopReport& shop);

}  // namespace overbend::commands
