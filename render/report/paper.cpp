#include "render/report/paper.h"

#include <algorithm>

#include "render/picture/marks.h"
#include "render/picture/palette.h"
#include "render/picture/text_width.h"
#include "sim/errors.h"

namespace overbend::report {

using namespace picture;

namespace {

constexpr double heading_size = 20.0;
constexpr double section_size = 14.0;
constexpr double cell_room = 4.0;
constexpr int most_lines = 12;  // of a paragraph or cell

const ThemeColours& colours() {
    return theme_colours(Theme::light);
}

std::vector<std::string> broken(const std::string& words, double width) {
    std::vector<std::string> lines = wrapped(words, body_size, width, width, most_lines);
    if (lines.empty()) lines.push_back("");
    return lines;
}

std::vector<std::string> foot_lines(const Paper& paper) {
    std::vector<std::string> lines;
    for (const std::string& item : paper.foot)
        for (const std::string& line : broken(item, paper.width())) lines.push_back(line);
    return lines;
}

void add_foot(Paper& paper) {
    const std::vector<std::string> lines = foot_lines(paper);
    double y = paper.bottom;
    add_line(paper.page(), {paper.left(), y}, {paper.left() + paper.width(), y}, colours().ink, 1.0);
    for (const std::string& line : lines)
        add_text(paper.page(), line, {paper.left(), y += body_row}, body_size, colours().ink);
}

// A row's cells as lines, and its height.
struct BrokenRow {
    std::vector<std::vector<std::string>> cells;
    double height = 0.0;
};

BrokenRow broken_row(const PaperTable& table, const std::vector<std::string>& cells, double width) {
    BrokenRow row;
    std::size_t lines = 1;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        row.cells.push_back(
            broken(i < cells.size() ? cells[i] : "", table.columns[i].width * width - 2.0 * cell_room));
        lines = std::max(lines, row.cells.back().size());
    }
    row.height = static_cast<double>(lines) * body_row + 3.0;
    return row;
}

void add_row(Paper& paper, const PaperTable& table, const BrokenRow& row, double left, double width,
             Weight weight) {
    double x = left;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const PaperColumn& column = table.columns[i];
        const double wide = column.width * width;
        const double at = column.across == Across::left     ? x + cell_room
                          : column.across == Across::middle ? x + 0.5 * wide
                                                            : x + wide - cell_room;
        double y = paper.y;
        for (const std::string& line : row.cells[i])
            add_text(paper.page(), fitted(line, body_size, wide - cell_room, weight),
                     {at, y += body_row - 2.0}, body_size, colours().ink, column.across, weight);
        x += wide;
    }
    paper.y += row.height;
    add_line(paper.page(), {left, paper.y}, {left + width, paper.y},
             weight == Weight::bold ? colours().ink : colours().rule, weight == Weight::bold ? 1.0 : 0.6);
    paper.y += 1.0;
}

}  // namespace

void begin_page(Paper& paper) {
    paper.pages.push_back({paper.title, paper_width, paper_height, colours().page});
    paper.bottom = paper_height - paper_margin - 1.4 * body_row -
                   static_cast<double>(foot_lines(paper).size()) * body_row;
    paper.y = paper_margin + heading_size;
    const double room = paper.width();
    const double remark = std::min(0.6 * room, text_width(paper.heading_remark, body_size));
    add_text(paper.page(), fitted(paper.heading, heading_size, room - remark - 16.0, Weight::bold),
             {paper.left(), paper.y}, heading_size, colours().ink, Across::left, Weight::bold);
    add_text(paper.page(), fitted(paper.heading_remark, body_size, 0.6 * room),
             {paper.left() + room, paper.y}, body_size, colours().ink, Across::right);
    paper.y += 9.0;
    add_line(paper.page(), {paper.left(), paper.y}, {paper.left() + room, paper.y}, colours().ink, 1.5);
    paper.y += 10.0;
    add_foot(paper);
}

void need(Paper& paper, double height) {
    if (paper.pages.empty()) begin_page(paper);
    if (paper.y + height <= paper.bottom - 6.0) return;
    begin_page(paper);
    if (paper.y + height > paper.bottom - 6.0)
        throw OutOfRange("height on a page", fixed(height, 0) + " px",
                         "a page has " + fixed(paper.bottom - 6.0 - paper.y, 0) + " px");
}

void add_section(Paper& paper, const std::string& words) {
    need(paper, section_size + 2.5 * body_row);
    paper.y += section_size + 8.0;
    add_text(paper.page(), fitted(words, section_size, paper.width(), Weight::bold), {paper.left(), paper.y},
             section_size, colours().ink, Across::left, Weight::bold);
    paper.y += 6.0;
}

void add_paragraph(Paper& paper, const std::string& words) {
    for (const std::string& line : broken(words, paper.width())) {
        need(paper, body_row);
        add_text(paper.page(), line, {paper.left(), paper.y += body_row - 2.0}, body_size, colours().ink);
        paper.y += 2.0;
    }
}

void add_items(Paper& paper, const std::vector<std::string>& items) {
    constexpr double indent = 14.0;
    for (const std::string& item : items) {
        const std::vector<std::string> lines = broken(item, paper.width() - indent);
        for (std::size_t i = 0; i < lines.size(); ++i) {
            need(paper, body_row);
            paper.y += body_row - 2.0;
            if (i == 0) add_text(paper.page(), "\u2013", {paper.left(), paper.y}, body_size, colours().ink);
            add_text(paper.page(), lines[i], {paper.left() + indent, paper.y}, body_size, colours().ink);
            paper.y += 2.0;
        }
    }
}

void add_table(Paper& paper, const PaperTable& table) {
    const double width = table.width > 0.0 ? table.width : paper.width();
    const double left = table.width > 0.0 ? table.left : paper.left();
    std::vector<std::string> heads;
    for (const PaperColumn& column : table.columns) heads.push_back(column.head);
    const BrokenRow head = broken_row(table, heads, 0.94 * width);  // bold words are wider
    bool headed = false;
    for (const std::vector<std::string>& cells : table.rows) {
        const BrokenRow row = broken_row(table, cells, width);
        const std::size_t pages = paper.pages.size();
        need(paper, row.height + 2.0 + (headed ? 0.0 : head.height));
        if (!headed || paper.pages.size() != pages) {
            add_row(paper, table, head, left, width, Weight::bold);
            headed = true;
        }
        add_row(paper, table, row, left, width, Weight::normal);
    }
    paper.y += 4.0;
}

void add_write_ins(Paper& paper, const std::vector<WriteIn>& row) {
    constexpr double height = 28.0;
    need(paper, height + 6.0);
    double x = paper.left();
    for (const WriteIn& one : row) {
        const double label = one.label_width * paper.width(), box = one.box_width * paper.width();
        add_text_on_middle(paper.page(), fitted(one.label, body_size, label - cell_room),
                           {x, paper.y + 0.5 * height}, body_size, colours().ink);
        add_line(paper.page(), rectangle({x + label, paper.y, box - 8.0, height}), colours().ink, 1.0);
        x += label + box;
    }
    paper.y += height + 6.0;
}

std::vector<DrawingList> finished(Paper paper) {
    for (std::size_t i = 0; i < paper.pages.size(); ++i)
        add_text(paper.pages[i],
                 "page " + std::to_string(i + 1) + " of " + std::to_string(paper.pages.size()),
                 {paper.left() + paper.width(), paper_height - paper_margin + 4.0}, body_size,
                 colours().muted, Across::right);
    return std::move(paper.pages);
}

}  // namespace overbend::report
