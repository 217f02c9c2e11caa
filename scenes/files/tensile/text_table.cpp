#include "scenes/files/tensile/text_table.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <map>
#include <system_error>

#include "scenes/files/case/case_error.h"
#include "sim/counted.h"

namespace overbend::files {

namespace {

constexpr std::size_t longest_record = 64u << 20;  // bytes: a million rows

std::string trimmed(const std::string& text) {
    const char* blank = " \t\r\f\v";
    const std::size_t from = text.find_first_not_of(blank);
    if (from == std::string::npos) return "";
    std::string inner = text.substr(from, text.find_last_not_of(blank) - from + 1);
    if (inner.size() > 1 && inner.front() == '"' && inner.back() == '"')
        inner = inner.substr(1, inner.size() - 2);
    return inner;
}

struct Line {
    int number = 0;
    std::string text;
};

std::vector<Line> lines_of(const std::string& text, const std::string& as) {
    if (text.compare(0, 2, "\xff\xfe") == 0 || text.compare(0, 2, "\xfe\xff") == 0)
        throw CaseError(as, 0, 0, "", "the text is UTF-16", "save it as UTF-8");
    if (const std::size_t nul = text.find('\0'); nul != std::string::npos)
        throw CaseError(as, static_cast<int>(std::count(text.begin(), text.begin() + nul, '\n')) + 1, 0, "",
                        "this is no text", "export the record as text with columns (.csv, .txt)");
    std::vector<Line> lines;
    std::size_t from = text.compare(0, 3, "\xef\xbb\xbf") == 0 ? 3 : 0;
    int number = 1;
    while (from < text.size()) {
        // Lines end in \n, \r\n or, on old machines, in \r alone.
        std::size_t end = text.find_first_of("\r\n", from);
        if (end == std::string::npos) end = text.size();
        const std::string line = text.substr(from, end - from);
        if (!trimmed(line).empty()) lines.push_back({number, line});
        from = end + (text.compare(end, 2, "\r\n") == 0 ? 2 : 1);
        ++number;
    }
    return lines;
}

TextRow split(const Line& line, Separator separator) {
    const char mark = separator == Separator::tab ? '\t' : separator == Separator::semicolon ? ';' : ',';
    TextRow row;
    row.line = line.number;
    const std::string& s = line.text;
    std::size_t from = 0;
    bool quoted = false;
    const auto add = [&](std::size_t end) {
        row.cells.push_back(trimmed(s.substr(from, end - from)));
        row.columns.push_back(static_cast<int>(from) + 1);
    };
    for (std::size_t i = 0; i <= s.size(); ++i) {
        if (i < s.size() && s[i] == '"') quoted = !quoted;
        if (separator == Separator::spaces) {
            const bool blank = i == s.size() || (!quoted && (s[i] == ' ' || s[i] == '\t'));
            if (blank && i > from) add(i);
            if (blank) from = i + 1;
        } else if (i == s.size() || (s[i] == mark && !quoted)) {
            add(i);
            from = i + 1;
        }
    }
    while (!row.cells.empty() && row.cells.back().empty()) row.cells.pop_back(), row.columns.pop_back();
    return row;
}

// Figures in a row that holds nothing else, 0 where it does.
std::size_t figures_in(const TextRow& row, Decimal decimal) {
    std::size_t figures = 0;
    for (const std::string& cell : row.cells) {
        if (cell.empty()) continue;
        if (!figure_of(cell, decimal)) return 0;
        ++figures;
    }
    return figures < 2 ? 0 : row.cells.size();
}

struct Reading {
    Separator separator = Separator::comma;
    Decimal decimal = Decimal::point;
    std::size_t cells = 0;  // in most rows of figures
    std::size_t rows = 0;   // with so many
};

Reading reading_of(const std::vector<Line>& lines, Separator separator, Decimal decimal) {
    std::map<std::size_t, std::size_t> counts;
    for (const Line& line : lines)
        if (const std::size_t cells = figures_in(split(line, separator), decimal)) ++counts[cells];
    Reading reading{separator, decimal, 0, 0};
    for (const auto& [cells, rows] : counts)
        if (rows > reading.rows) reading.cells = cells, reading.rows = rows;
    return reading;
}

// By the first lines: all of a long record are alike.
Reading find_reading(const std::vector<Line>& all, const TextFormat& format) {
    constexpr std::size_t enough = 2000;
    const std::vector<Line> lines(all.begin(), all.begin() + std::min(all.size(), enough));
    Reading best;
    for (const Separator s : {Separator::tab, Separator::semicolon, Separator::comma, Separator::spaces})
        for (const Decimal d : {Decimal::point, Decimal::comma}) {
            if (format.separator.value_or(s) != s || format.decimal.value_or(d) != d) continue;
            if (s == Separator::comma && d == Decimal::comma) continue;
            const Reading reading = reading_of(lines, s, d);
            if (reading.rows > best.rows) best = reading;
        }
    return best;
}

[[noreturn]] void refuse_cell(const std::string& as, const TextRow& row, const Reading& reading) {
    for (std::size_t i = 0; i < row.cells.size(); ++i)
        if (!row.cells[i].empty() && !figure_of(row.cells[i], reading.decimal))
            throw CaseError(as, row.line, row.columns[i], "column " + std::to_string(i + 1),
                            "\"" + row.cells[i].substr(0, 40) + "\" is no figure",
                            "correct or remove this line");
    throw CaseError(as, row.line, 1, "",
                    counted(row.cells.size(), "figure") +
                        (row.cells.size() == 1 ? " stands here, " : " stand here, ") +
                        std::to_string(reading.cells) + " in the other lines",
                    "give as many on every line; see --separator and --decimal");
}

}  // namespace

std::optional<double> figure_of(const std::string& cell, Decimal decimal) {
    std::string text;
    const bool both = cell.find('.') != std::string::npos && cell.find(',') != std::string::npos;
    for (const char c : cell) {
        if (decimal == Decimal::comma && c == ',')
            text += '.';
        else if (c == ',' || (c == '.' && decimal == Decimal::comma)) {
            // Points between thousands, where commas are decimal.
            if (!both || decimal == Decimal::point) return std::nullopt;
        } else
            text += c;
    }
    if (!text.empty() && text.front() == '+') text.erase(0, 1);
    double value = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || !std::isfinite(value))
        return std::nullopt;
    return value;
}

TextTable parse_text_table(const std::string& text, const std::string& as, const TextFormat& format) {
    const std::vector<Line> lines = lines_of(text, as);
    if (lines.empty())
        throw CaseError(as, 0, 0, "", "the file is empty", "give the record of a tensile test");
    const Reading reading = find_reading(lines, format);
    if (reading.rows < 2)
        throw CaseError(as, 0, 0, "", "two columns of figures are not found",
                        "give a record with strain and stress, or elongation and force, in columns; see "
                        "--separator and --decimal");
    TextTable table;
    table.file = as;
    table.separator = reading.separator, table.decimal = reading.decimal;
    std::size_t words_behind = 0;
    for (const Line& line : lines) {
        const bool remark = trimmed(line.text).front() == '#';
        TextRow row = split(line, reading.separator);
        const bool figures =
            !remark && figures_in(row, reading.decimal) > 0 && row.cells.size() <= reading.cells;
        if (table.rows.empty()) {
            const std::size_t found = remark ? 0 : figures_in(row, reading.decimal);
            if (found > 0 && found != reading.cells) refuse_cell(as, row, reading);
            (found > 0 ? table.rows : table.above).push_back(std::move(row));
            continue;
        }
        if (remark) continue;
        const bool no_figure = std::none_of(row.cells.begin(), row.cells.end(), [&](const std::string& cell) {
            return figure_of(cell, reading.decimal).has_value();
        });
        if (no_figure) {  // words at the end, as "end of test"
            if (words_behind == 0)
                table.said.push_back("Line " + std::to_string(line.number) +
                                     " and what follows it is not read: it has words.");
            words_behind = static_cast<std::size_t>(line.number);
            continue;
        }
        if (words_behind > 0)
            throw CaseError(as, static_cast<int>(words_behind), 1, "", "words stand between the figures",
                            "remove the line; give one test a file");
        if (!figures) refuse_cell(as, row, reading);
        table.rows.push_back(std::move(row));
    }
    return table;
}

std::string read_text(const std::filesystem::path& file) {
    const std::string name = file.string();
    std::error_code ignored;
    if (std::filesystem::is_directory(file, ignored))
        throw CaseError(name, 0, 0, "", "this is a folder", "give the path of a record as text (.csv, .txt)");
    if (!std::filesystem::exists(file, ignored))
        throw CaseError(name, 0, 0, "", "there is no such file", "check the path");
    std::error_code failed;
    const auto size = std::filesystem::file_size(file, failed);
    if (!failed && size > longest_record)
        throw CaseError(name, 0, 0, "", "the file is larger than 64 MB", "export fewer points of the record");
    std::ifstream stream(file, std::ios::binary);
    std::string text((std::istreambuf_iterator<char>(stream)), std::istreambuf_iterator<char>());
    if (!stream.good() && !stream.eof())
        throw CaseError(name, 0, 0, "", "the file cannot be read", "check its permissions");
    return text;
}

}  // namespace overbend::files
