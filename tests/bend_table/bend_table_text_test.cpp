// A bend table as CSV, as tables and on paper.

#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <sstream>

#include "scenes/documents/bend_table/bend_table_sheet.h"
#include "scenes/documents/bend_table/bend_table_text.h"
#include "tests/bend_table/small_order.h"

using namespace overbend;
using overbend::tests::small_order;

namespace {

// Columns of a line, quotation marks heeded.
int columns_of(const std::string& line) {
    int columns = 1;
    bool quoted = false;
    for (const char c : line) {
        if (c == '"') quoted = !quoted;
        if (c == ',' && !quoted) ++columns;
    }
    return columns;
}

}  // namespace

TEST_CASE("bend table: CSV has a row a bend, and as many columns on each") {
    job::BendTableOrder order = small_order({60.0, 170.0});
    order.tools[0].name = "an \"odd\", name";
    const auto rows = job::bend_table(order);
    std::istringstream csv(documents::bend_table_csv(order, rows));
    std::string line;
    std::vector<std::string> lines;
    while (std::getline(csv, line)) lines.push_back(line);
    REQUIRE(lines.size() == 3);
    for (const std::string& l : lines) CHECK(columns_of(l) == columns_of(lines[0]));
    CHECK(lines[0].find("bend_deduction_mm,bend_allowance_mm,k_factor") != std::string::npos);
    CHECK(lines[1].find("\"an \"\"odd\"\", name\"") != std::string::npos);
    CHECK(lines[2].find("not made: ") != std::string::npos);

    const auto json = documents::bend_table_json(order, rows);
    CHECK(json["rows"].size() == 2);
    CHECK(json["rows"][0]["bend_deduction_mm"].is_number());
    CHECK(json["rows"][1]["bend_deduction_mm"].is_null());
    CHECK(json["rows"][1].count("reason") == 1);

    const auto tables = documents::bend_tables(order, rows);
    REQUIRE(tables.size() == 1);
    CHECK(tables[0].rows.size() == 2);
    CHECK(tables[0].notes.size() == 1);
}

TEST_CASE("bend table: pages of A4, as many as it takes") {
    const job::BendTableOrder order = small_order({60.0});
    const std::vector<job::BendTableRow> one = job::bend_table(order);
    std::vector<job::BendTableRow> many(150, one[0]);
    CHECK(documents::bend_table_pages(order, one).size() == 1);
    const auto pages = documents::bend_table_pages(order, many);
    CHECK(pages.size() > 1);
    for (const picture::DrawingList& page : pages) CHECK(page.width * 1123 == page.height * 794);
}
