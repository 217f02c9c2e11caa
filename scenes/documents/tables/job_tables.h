// The figures of a job as tables. Angles are signed as drawn, lengths mm.

#pragma once

#include "scenes/documents/tables/table.h"
#include "scenes/job/run/flat_pattern.h"
#include "scenes/job/shop/shop.h"

namespace overbend::documents {

// ---- strokes and bends

Table order_table(const files::Case& c, const job::JobResult& job);
Table strokes_table(const files::Case& c, const job::JobResult& job);
Table bends_table(const files::Case& c, const job::JobResult& job);
Table clearances_table(const files::Case& c, const job::JobResult& job);
Table finished_table(const files::Case& c, const job::JobResult& job);
Table rules_table(const files::Case& c, const job::JobResult& job);  // what those of the trade find

// ---- the blank

Table lengths_table(const job::FlatPattern& pattern);
Table bend_lines_table(const files::Case& c, const job::FlatPattern& pattern);
Table cutouts_table(const files::Case& c, const job::FlatPattern& pattern);

// ---- press, tools, cost

enum class Checks { all, tightest };  // of every stroke; of each kind the one that comes nearest to its limit
Table press_checks_table(const files::Case& c, const job::ShopReport& shop, Checks which);
Table press_strokes_table(const files::Case& c, const job::ShopReport& shop);
Table strength_table(const files::Case& c, const job::ShopReport& shop);
Table making_table(const files::Case& c, const job::ShopReport& shop);
Table springs_table(const files::Case& c, const job::ShopReport& shop);
Table cost_table(const job::ShopReport& shop);
Table groups_table(const job::ShopReport& shop, const std::vector<int>& batches);
Table tool_costs_table(const job::ShopReport& shop);

std::string capital(std::string text);  // "force" -> "Force"

}  // namespace overbend::documents
