#include "render/report/html.h"

#include <stdexcept>

#include "sim/words.h"

namespace overbend::report {

namespace {

std::string cell(const char* tag, const std::string& inner, const Column& column, const char* scope) {
    std::string text = words("<%s", tag);
    if (scope[0] != '\0') text += words(" scope=\"%s\"", scope);
    if (column.is_number) text += " class=\"number\"";
    return text + ">" + inner + words("</%s>", tag);
}

}  // namespace

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
