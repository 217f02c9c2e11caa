// The same figures in terminal, page, window and results.json: one table, printed by each.

#include <doctest/doctest.h>

#include <atomic>
#include <cmath>
#include <nlohmann/json.hpp>

#include "render/report/html.h"
#include "scenes/documents/report/page_parts.h"
#include "scenes/documents/results/results_json.h"
#include "scenes/files/case/read_case.h"
#include "scenes/window/panels/figure_tables.h"
#include "sim/words.h"

using namespace overbend;
using documents::Cell;
using documents::Column;
using documents::Table;

namespace {

const window::RanJob& demo() {
    static const window::RanJob job = [] {
        const std::atomic<bool> cancelled{false};
        window::RunProgress progress;
        return window::run_job(files::read_case("cases/cable-hook/case.toml"), window::Wanted(cancelled),
                               progress);
    }();
    return job;
}

std::vector<Table> tables_of_the_window() {
    std::vector<Table> all;
    for (const window::FigurePage& page : {stroke_figures(demo()), blank_figures(demo()),
                                           press_figures(demo()), tool_figures(demo()), cost_figures(demo())})
        all.insert(all.end(), page.tables.begin(), page.tables.end());
    return all;
}

// As the page writes a figure: with its own minus and dash.
std::string on_page(std::string text) {
    if (text == "-") return "\u2013";
    return text[0] == '-' ? "\u2212" + text.substr(1) : text;
}

}  // namespace

TEST_CASE("every figure of the window's tables stands in the terminal's and in the page's") {
    const std::vector<Table> tables = tables_of_the_window();
    CHECK(tables.size() >= 14);
    int figures = 0;
    for (const Table& table : tables) {
        CAPTURE(table.title);
        REQUIRE_FALSE(table.rows.empty());
        const std::string text = table_text(table);
        const std::string html = report::table_html(documents::page_table(table), "t");
        const Table shown = brief(table);
        for (const std::vector<Cell>& row : shown.rows)
            for (std::size_t i = 0; i < row.size(); ++i) {
                const std::string said = printed(shown.columns[i], row[i]);
                CAPTURE(said);
                CHECK(text.find(said) != std::string::npos);
                const std::string there = row[i].number ? on_page(said) : said;
                CHECK(html.find(">" + report::escaped(said == "-" ? "\u2013" : there) + "<") !=
                      std::string::npos);
                figures += row[i].number.has_value();
            }
    }
    CHECK(figures > 100);
}

TEST_CASE("the tables have the figures of results.json") {
    const nlohmann::json results =
        nlohmann::json::parse(documents::results_json(demo().c, demo().result, demo().shop));
    const Table bends = documents::bends_table(demo().c, demo().result);
    std::size_t row = 0;
    for (const nlohmann::json& step : results["steps"])
        for (const nlohmann::json& bend : step["bends"]) {
            REQUIRE(row < bends.rows.size());
            const std::vector<Cell>& cells = bends.rows[row++];
            CHECK(printed(bends.columns[0], cells[0]) == bend["name"]);
            CHECK(printed(bends.columns[4], cells[4]) == words("%.2f", bend["free_deg"].get<double>()));
            CHECK(printed(bends.columns[10], cells[10]) == words("%.3f", bend["thickness_mm"].get<double>()));
        }
    CHECK(row == bends.rows.size());
    const Table strokes = documents::strokes_table(demo().c, demo().result);
    for (std::size_t i = 0; i < strokes.rows.size(); ++i)
        CHECK(printed(strokes.columns[2], strokes.rows[i][2]) ==
              words("%.2f", results["steps"][i]["peak_force_kN"].get<double>()));
}

TEST_CASE(
    "a table for reading: heads broken to their columns, figures flush right, what is not known a dash") {
    const Table table{
        "Title",
        {{"Name", "", documents::in_words, "name"}, {"Greatest force", "kN", 2, "force"}, {"Own", "", 0}},
        {{"lip", -0.001, Cell(2.5, 1, "mm")}, {"a longer name", Cell(), Cell()}},
        {"A note."}};
    CHECK(table_text(table) ==
          "Title\n"
          "                   Greatest\n"
          "                      force\n"
          "    Name                 kN     Own\n"
          "    lip                0.00  2.5 mm\n"
          "    a longer name         -       -\n"
          "A note.\n");
    const Table narrow = brief(table);
    REQUIRE(narrow.columns.size() == 2);
    CHECK(narrow.columns[1].name == "force");
    CHECK(narrow.rows[0].size() == 2);
    CHECK(documents::figure_words(NAN, 2) == "-");
    CHECK(documents::figure_words(1e300, 2) == "-");
}
