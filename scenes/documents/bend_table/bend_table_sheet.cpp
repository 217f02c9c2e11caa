#include "scenes/documents/bend_table/bend_table_sheet.h"

#include "render/picture/cautions.h"
#include "render/report/paper.h"
#include "scenes/documents/bend_table/bend_table_text.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

report::PaperTable paper_table(const Table& table) {
    report::PaperTable paper;
    const double width = 1.0 / static_cast<double>(table.columns.size());
    for (const Column& c : table.columns)
        paper.columns.push_back(
            {c.brief + (c.unit.empty() ? "" : ", " + c.unit), width, picture::Across::right});
    for (const std::vector<Cell>& row : table.rows) {
        std::vector<std::string> cells;
        for (std::size_t i = 0; i < row.size(); ++i) cells.push_back(printed(table.columns[i], row[i]));
        paper.rows.push_back(std::move(cells));
    }
    return paper;
}

}  // namespace

std::vector<picture::DrawingList> bend_table_pages(const job::BendTableOrder& order,
                                                   const std::vector<job::BendTableRow>& rows) {
    report::Paper paper;
    paper.title = "Bend table";
    paper.heading = "Bend table";
    paper.heading_remark = order.material.title + words(", %.4g mm thick", order.thickness) +
                           (order.width ? words(", %.4g mm wide", *order.width) : "");
    paper.foot = {picture::estimate_words()};
    report::begin_page(paper);
    report::add_paragraph(
        paper, words("Strip %.4g mm thick, friction %.3g. A V bend a row, pressed to its angle free.",
                     order.thickness, order.friction));
    for (const Table& table : bend_tables(order, rows)) {
        report::add_section(paper, table.title);
        report::add_table(paper, paper_table(table));
        if (!table.notes.empty()) report::add_items(paper, table.notes);
    }
    report::add_section(paper, "How to use it");
    report::add_items(paper, bend_table_notes());
    return report::finished(std::move(paper));
}

}  // namespace overbend::documents
