// A bend table in words: for the terminal, as CSV, as JSON. Keys of CSV and JSON: assets/manual/results.md.

#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "scenes/documents/tables/table.h"
#include "scenes/job/bend_table/bend_table.h"

namespace overbend::documents {

// One a pair of tools.
std::vector<Table> bend_tables(const job::BendTableOrder& order, const std::vector<job::BendTableRow>& rows);

// Comma, decimal point, one row a bend, heads with units; a bend that was not made has its reason and no
// figures.
std::string bend_table_csv(const job::BendTableOrder& order, const std::vector<job::BendTableRow>& rows);

nlohmann::ordered_json bend_table_json(const job::BendTableOrder& order,
                                       const std::vector<job::BendTableRow>& rows);

// What the columns mean, one sentence each.
std::vector<std::string> bend_table_notes();

}  // namespace overbend::documents
