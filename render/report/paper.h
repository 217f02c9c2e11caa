// Pages of A4 paper, filled from top to bottom: words, tables, boxes to write in. What does not fit begins a
// new page with the same heading.
//
// Units  picture pixels of 0.75 pt: a page is 794 x 1123.

#pragma once

#include <string>
#include <vector>

#include "render/picture/drawing_list.h"

namespace overbend::report {

constexpr int paper_width = 794;
constexpr int paper_height = 1123;
constexpr double paper_margin = 45.0;
constexpr double body_size = 12.0;  // 9 pt
constexpr double body_row = 16.5;

struct Paper {
    std::string title;                    // of the document
    std::string heading, heading_remark;  // of every page: large, and small beside it
    std::vector<std::string> foot;        // of every page, above the page's number; broken into lines
    std::vector<picture::DrawingList> pages;
    double y = 0.0;       // where the next thing begins on the last page
    double bottom = 0.0;  // where the foot begins
    double left() const { return paper_margin; }
    double width() const { return paper_width - 2.0 * paper_margin; }
    picture::DrawingList& page() { return pages.back(); }
};

void begin_page(Paper& paper);
// A new page if less than this is left of the last one. Throws OutOfRange: more than a page has.
void need(Paper& paper, double height);

void add_section(Paper& paper, const std::string& words);    // a heading; keeps some room for what follows it
void add_paragraph(Paper& paper, const std::string& words);  // as many lines as it takes
void add_items(Paper& paper, const std::vector<std::string>& items);  // each behind a dash

struct PaperColumn {
    std::string head;
    double width = 0.0;  // part of the table's, their sum is 1
    picture::Across across = picture::Across::left;
};
struct PaperTable {
    std::vector<PaperColumn> columns;
    std::vector<std::vector<std::string>> rows;  // cells; words wider than a cell are broken into lines
    double left = 0.0, width = 0.0;              // 0: the whole of the paper
};
// Heads are said again on every page that the table goes on. A row stays whole.
void add_table(Paper& paper, const PaperTable& table);

// Boxes to be filled in by hand, in rows, a label before each. Widths are parts of the paper's.
struct WriteIn {
    std::string label;
    double label_width = 0.0;
    double box_width = 0.0;
};
void add_write_ins(Paper& paper, const std::vector<WriteIn>& row);

// Numbers the pages. To be called once, at the end; the lists are the paper's.
std::vector<picture::DrawingList> finished(Paper paper);

}  // namespace overbend::report
