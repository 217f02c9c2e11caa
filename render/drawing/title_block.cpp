#include "render/drawing/title_block.h"

#include <algorithm>

#include "render/drawing/ink.h"
#include "render/picture/marks.h"
#include "render/picture/text_width.h"

namespace overbend::drawing {

using namespace picture;

namespace {

constexpr double block_width = 180.0, block_row = 9.0;  // mm
constexpr double table_row = 5.2, note_row = 5.0;
constexpr double caption_size = 2.4;
constexpr double least_word_size = 2.5;  // of words in the block that are longer than their field

Rect block_of(const PaperSize& paper) {
    const Rect frame = frame_of(paper);
    return {frame.right() - block_width, frame.bottom() - 3.0 * block_row, block_width, 3.0 * block_row};
}

std::vector<std::string> note_lines(const DrawingSheet& sheet) {
    std::vector<std::string> lines;
    for (const std::string& note : sheet.notes)
        for (const std::string& line : wrapped(note, word_size, block_width, block_width, 4))
            lines.push_back(line);
    return lines;
}

std::vector<double> column_widths(const DrawingTable& table) {
    std::vector<double> widths;
    for (std::size_t k = 0; k < table.heads.size(); ++k) {
        double most = text_width(table.heads[k], word_size);
        for (const auto& row : table.rows) most = std::max(most, text_width(row[k], word_size));
        widths.push_back(most + 4.0);
    }
    return widths;
}

double table_height(const DrawingTable& table) {
    return table.rows.empty() ? 0.0 : table_row * static_cast<double>(table.rows.size() + 1) + 2.0;
}

void paint_table(DrawingList& list, const Rect& block, const DrawingTable& table) {
    if (table.rows.empty()) return;
    const std::vector<double> widths = column_widths(table);
    double total = 0.0;
    for (const double width : widths) total += width;
    const double top = block.y - table_height(table);
    const double bottom = top + table_row * static_cast<double>(table.rows.size() + 1);
    double x = block.right() - total;
    for (std::size_t row = 0; row <= table.rows.size() + 1; ++row) {
        const double y = top + table_row * static_cast<double>(row);
        add_line(list, {block.right() - total, y}, {block.right(), y}, black, row == 1 ? thick : thin);
    }
    for (std::size_t k = 0; k < widths.size(); ++k) {
        add_line(list, {x, top}, {x, bottom}, black, thin);
        for (std::size_t row = 0; row <= table.rows.size(); ++row) {
            const std::string& words = row == 0 ? table.heads[k] : table.rows[row - 1][k];
            const double y =
                baseline_for_middle(top + table_row * (static_cast<double>(row) + 0.5), word_size);
            add_text(list, words, {x + 2.0, y}, word_size, black);
        }
        x += widths[k];
    }
    add_line(list, {x, top}, {x, bottom}, black, thin);
}

struct Field {
    double width;
    const char* caption;
    std::string words;
};

void paint_block(DrawingList& list, const PaperSize& paper, const DrawingSheet& sheet,
                 const std::string& scale) {
    const Rect block = block_of(paper);
    const std::vector<std::vector<Field>> rows = {
        {{116.0, "Job", sheet.title},
         {32.0, "Sheet", std::to_string(sheet.number) + " of " + std::to_string(sheet.of)},
         {32.0, "Paper", paper.name}},
        {{116.0, "Drawn", sheet.name}, {32.0, "Scale", scale}, {32.0, "Sizes", "in mm"}},
        {{116.0, "Material", sheet.material},
         {32.0, "Tolerances", sheet.tolerances},
         {32.0, "Made with", "overbend"}}};
    add_line(list, rectangle(block), black, thick);
    double y = block.y;
    for (const std::vector<Field>& row : rows) {
        double x = block.x;
        if (y > block.y) add_line(list, {block.x, y}, {block.right(), y}, black, thin);
        for (const Field& field : row) {
            if (x > block.x) add_line(list, {x, y}, {x, y + block_row}, black, thin);
            add_text(list, field.caption, {x + 1.5, y + 2.9}, caption_size, black);
            const double room = field.width - 3.0;
            const double size =
                std::clamp(word_size * room / text_width(field.words, word_size), least_word_size, word_size);
            add_text(list, fitted(field.words, size, room), {x + 1.5, y + 7.4}, size, black);
            x += field.width;
        }
        y += block_row;
    }
}

}  // namespace

Rect frame_of(const PaperSize& paper) {
    return {20.0, 10.0, paper.width - 30.0, paper.height - 20.0};
}

Rect view_area(const PaperSize& paper, const DrawingSheet& sheet) {
    const Rect frame = frame_of(paper);
    const double below = 3.0 * block_row + table_height(sheet.table) +
                         note_row * static_cast<double>(note_lines(sheet).size());
    return grown({frame.x, frame.y, frame.width, frame.height - below}, -4.0);
}

void paint_surroundings(DrawingList& list, const PaperSize& paper, const DrawingSheet& sheet,
                        const std::string& scale) {
    add_line(list, rectangle(frame_of(paper)), black, thick);
    const Rect block = block_of(paper);
    paint_block(list, paper, sheet, scale);
    paint_table(list, block, sheet.table);
    const std::vector<std::string> notes = note_lines(sheet);
    double y = block.y - table_height(sheet.table) - note_row * static_cast<double>(notes.size());
    for (const std::string& note : notes) {
        y += note_row;
        add_text(list, note, {block.x + 1.5, y - 1.8}, word_size, black);
    }
}

}  // namespace overbend::drawing
