#include "scenes/documents/tables/table.h"

#include <algorithm>
#include <cmath>
#include <sstream>

#include "sim/words.h"

namespace overbend::documents {

namespace {

constexpr double beyond_meaning = 1e200;  // what stands for "none" in a least distance

std::size_t letters(const std::string& text) {
    return std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xc0) != 0x80; });
}

std::string padded(const std::string& text, std::size_t width, bool left) {
    const std::string blanks(width - std::min(width, letters(text)), ' ');
    return left ? text + blanks : blanks + text;
}

// Whole words, as many to a line as go into the width.
std::vector<std::string> broken(const std::string& text, std::size_t width) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string word; in >> word;) {
        if (!lines.empty() && letters(lines.back()) + 1 + letters(word) <= width)
            lines.back() += " " + word;
        else
            lines.push_back(word);
    }
    return lines;
}

struct Layout {
    std::vector<std::size_t> widths;
    std::vector<std::vector<std::string>> heads;  // lines of each column, its unit the last
    std::size_t head_lines = 0;
};

Layout layout_of(const Table& table) {
    Layout layout;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const Column& column = table.columns[i];
        std::size_t width = letters(column.unit);
        for (const std::string& word : broken(column.name, 0)) width = std::max(width, letters(word));
        for (const std::vector<Cell>& row : table.rows)
            width = std::max(width, letters(printed(column, row[i])));
        layout.widths.push_back(width);
        layout.heads.push_back(broken(column.name, width));
        if (!column.unit.empty()) layout.heads.back().push_back(column.unit);
        layout.head_lines = std::max(layout.head_lines, layout.heads.back().size());
    }
    return layout;
}

std::string line_of(const Table& table, const Layout& layout, const std::vector<std::string>& cells) {
    std::string line = "  ";
    for (std::size_t i = 0; i < cells.size(); ++i)
        line += "  " + padded(cells[i], layout.widths[i], table.columns[i].decimals == in_words);
    return line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
}

}  // namespace

std::string figure_words(double value, int decimals) {
    if (!std::isfinite(value) || std::abs(value) > beyond_meaning) return "-";
    const std::string number = words("%.*f", decimals, value);
    const bool zero = number.find_first_not_of("-0.") == std::string::npos;
    return zero && number[0] == '-' ? number.substr(1) : number;
}

std::string printed(const Column& column, const Cell& cell) {
    if (!cell.known) return "-";
    if (!cell.number) return cell.words;
    const int decimals = cell.decimals == in_words ? column.decimals : cell.decimals;
    return figure_words(*cell.number, decimals) + (cell.unit.empty() ? "" : " " + cell.unit);
}

Table brief(const Table& table) {
    const bool any = std::any_of(table.columns.begin(), table.columns.end(),
                                 [](const Column& c) { return !c.brief.empty(); });
    if (!any) return table;
    Table shown{table.title, {}, std::vector<std::vector<Cell>>(table.rows.size()), table.notes};
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        if (table.columns[i].brief.empty()) continue;
        shown.columns.push_back(table.columns[i]);
        shown.columns.back().name = table.columns[i].brief;
        for (std::size_t r = 0; r < table.rows.size(); ++r) shown.rows[r].push_back(table.rows[r][i]);
    }
    return shown;
}

std::string table_text(const Table& table) {
    const Layout layout = layout_of(table);
    std::string text = table.title.empty() ? "" : table.title + "\n";
    for (std::size_t k = 0; k < layout.head_lines; ++k) {
        std::vector<std::string> cells;
        for (const std::vector<std::string>& head : layout.heads) {
            // Heads stand on the rows.
            const std::size_t above = layout.head_lines - head.size();
            cells.push_back(k < above ? "" : head[k - above]);
        }
        text += line_of(table, layout, cells);
    }
    for (const std::vector<Cell>& row : table.rows) {
        std::vector<std::string> cells;
        for (std::size_t i = 0; i < row.size(); ++i) cells.push_back(printed(table.columns[i], row[i]));
        text += line_of(table, layout, cells);
    }
    for (const std::string& note : table.notes) text += note + "\n";
    return text;
}

}  // namespace overbend::documents
