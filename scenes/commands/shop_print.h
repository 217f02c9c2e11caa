// Tables of the shop for reading: tools and what they bear, costs over batches.

#pragma once

#include <vector>

#include "scenes/documents/tables/table.h"
#include "scenes/job/shop/shop.h"

namespace overbend::commands {

void print_tools(const files::Case& c, const job::ShopReport& shop);

// Group by group for a part and a batch, and a part's cost at these batches.
void print_cost(const files::Case& c, const job::ShopReport& shop, const std::vector<int>& batches);

// After an empty line.
void print_table(const documents::Table& table);

// What was found, by its severity.
void print_findings(const files::Case& c, const job::Findings& findings);

}  // namespace overbend::commands
