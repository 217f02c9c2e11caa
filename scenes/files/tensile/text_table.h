// Text with columns of numbers, as testing machines export it: lines above the figures, then rows of figures.
//
// Found: the separator (tab, semicolon, comma, spaces), the decimal point or comma, and where the figures
// begin. Of the ways to read a file the one counts that makes figures of most lines, alike in number.
// Lines that begin with # belong to those above.

#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace overbend::files {

enum class Separator { tab, semicolon, comma, spaces };
enum class Decimal { point, comma };

struct TextFormat {
    std::optional<Separator> separator;  // absent: it is found
    std::optional<Decimal> decimal;
};

struct TextRow {
    int line = 0;                    // of the file, from 1
    std::vector<std::string> cells;  // trimmed, without quotation marks
    std::vector<int> columns;        // of the file, where each cell begins, from 1
};

struct TextTable {
    std::string file;
    std::vector<TextRow> above;  // lines before the figures that are not empty
    std::vector<TextRow> rows;   // all cells figures, or empty where a machine left one out
    Separator separator = Separator::comma;
    Decimal decimal = Decimal::point;
    std::vector<std::string> said;  // what was assumed or left out
};

// "12.5", "1,2E-3", "-.4"; none for anything else, nan and inf too.
std::optional<double> figure_of(const std::string& cell, Decimal decimal);

// The bytes of a file. Throws CaseError: no such file, a folder, too large, not readable.
std::string read_text(const std::filesystem::path& file);

// Throws CaseError: no text, no two columns of figures, a row with another
// number of figures than the others, a cell that is no figure.
TextTable parse_text_table(const std::string& text, const std::string& as, const TextFormat& format);

}  // namespace overbend::files
