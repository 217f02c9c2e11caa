#include "render/report/html.h"

#include <cstddef>
#include <stdexcept>

#include "sim/words.h"

namespace overbend::report {

namespace {

// How many bytes the letter at `i` has; 0 when it is not UTF-8 (RFC 3629).
std::size_t letter_at(const std::string& text, std::size_t i) {
    const auto byte = [&](std::size_t k) {
        return k < text.size() ? static_cast<unsigned char>(text[k]) : static_cast<unsigned char>(0);
    };
    const unsigned char first = byte(i);
    if (first < 0x80) return 1;
    const std::size_t length = first >= 0xf0 ? 4 : first >= 0xe0 ? 3 : 2;
    if (first < 0xc2 || first > 0xf4) return 0;
    for (std::size_t k = 1; k < length; ++k)
        if ((byte(i + k) & 0xc0) != 0x80) return 0;
    const unsigned char second = byte(i + 1);
    const bool too_long = (first == 0xe0 && second < 0xa0) || (first == 0xf0 && second < 0x90);
    const bool no_letter = (first == 0xed && second > 0x9f) || (first == 0xf4 && second > 0x8f);
    return too_long || no_letter ? 0 : length;
}

std::string cell(const char* tag, const std::string& inner, const Column& column, const char* scope) {
    std::string text = words("<%s", tag);
    if (scope[0] != '\0') text += words(" scope=\"%s\"", scope);
    if (column.is_number) text += " class=\"number\"";
    return text + ">" + inner + words("</%s>", tag);
}

}  // namespace

std::string escaped(const std::string& text) {
    std::string safe;
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t length = letter_at(text, i);
        const char c = text[i];
        const bool control = (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t') || c == 0x7f;
        if (length == 0 || control)
            safe += "\xef\xbf\xbd";
        else if (c == '&')
            safe += "&amp;";
        else if (c == '<')
            safe += "&lt;";
        else if (c == '>')
            safe += "&gt;";
        else if (c == '"')
            safe += "&quot;";
        else if (c == '\'')
            safe += "&#39;";
        else
            safe += text.substr(i, length);
        i += length == 0 ? 1 : length;
    }
    return safe;
}

std::string table_html(const Table& table, const std::string& id) {
    std::string html = "<div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-labelledby=\"" + id +
                       "\"><table><caption id=\"" + id + "\">" + escaped(table.caption) +
                       "</caption>\n<thead><tr>";
    for (const Column& column : table.columns) {
        std::string head = escaped(column.head);
        if (!column.unit.empty()) head += " <span class=\"unit\">" + escaped(column.unit) + "</span>";
        html += cell("th", head, column, "col");
    }
    html += "</tr></thead>\n<tbody>\n";
    for (const std::vector<std::string>& row : table.rows) {
        if (row.size() != table.columns.size())
            throw std::invalid_argument("table '" + table.caption + "': a row of " +
                                        std::to_string(row.size()) + " cells under " +
                                        std::to_string(table.columns.size()) + " columns");
        html += "<tr>";
        for (std::size_t i = 0; i < row.size(); ++i)
            html += cell(i == 0 ? "th" : "td", escaped(row[i]), table.columns[i], i == 0 ? "row" : "");
        html += "</tr>\n";
    }
    html += "</tbody></table></div>\n";
    if (!table.note.empty()) html += "<p class=\"note\">" + escaped(table.note) + "</p>\n";
    return html;
}

std::string terms_html(const std::vector<Term>& terms, const std::string& css_class) {
    std::string html = "<dl class=\"" + css_class + "\">\n";
    for (const Term& term : terms)
        html += "<div><dt>" + escaped(term.word) + "</dt><dd>" + escaped(term.meaning) + "</dd></div>\n";
    return html + "</dl>\n";
}

std::string list_html(const std::vector<std::string>& lines) {
    std::string html = "<ul>\n";
    for (const std::string& line : lines) html += "<li>" + escaped(line) + "</li>\n";
    return html + "</ul>\n";
}

std::string paragraphs_html(const std::vector<std::string>& paragraphs) {
    std::string html;
    for (const std::string& p : paragraphs) html += "<p>" + escaped(p) + "</p>\n";
    return html;
}

}  // namespace overbend::report
