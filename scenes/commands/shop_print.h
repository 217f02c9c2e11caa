// Tables of the shop for reading: tools and what they bear, costs over batches.

#pragma once

#include <vector>

#include "scenes/commands/options.h"
#include "scenes/documents/tables/table.h"
#include "scenes/job/shop/shop.h"

namespace overbend::commands {

void print_tools(const files::Case& c, const job::ShopReport& shop);

// Group by group for a part and a batch, and a part's cost at these batches.
void print_cost(const files::Case& c, const job::ShopReport& shop, const std::vector<int>& batches);

// After an empty line.
void print_table(const documents::Table& table);

// The verdict and what stops the job, then, unless quiet is asked for, what else was found.
void print_verdict(const files::Case& c, const job::JobResult& job, const Output& output);
// The verdict of a job that cannot be made, and what stops it; of one that can, nothing.
void print_refusal(const files::Case& c, const job::JobResult& job);

// What was found, by its severity.
void print_findings(const files::Case& c, const job::Findings& findings);

}  // namespace overbend::commands
