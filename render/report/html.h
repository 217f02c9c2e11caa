// Small pieces of a page: text, tables, lists. Whatever comes from a case goes through `escaped`.

#pragma once

#include <string>
#include <vector>

#include "render/picture/escaped.h"

namespace overbend::report {

using picture::escaped;

struct Column {
    std::string head;
    std::string unit = {};  // below the head; empty: none
    bool is_number = true;  // flush right, in figures of even width
};

// The first cell of a row is its head.
struct Table {
    std::string caption;
    std::vector<Column> columns;
    std::vector<std::vector<std::string>> rows;
    std::string note = {};  // below it
};

// id: of the caption, unique in the page. Throws std::invalid_argument: a row not as long as the head.
std::string table_html(const Table& table, const std::string& id);

struct Term {
    std::string word;
    std::string meaning;
};
std::string terms_html(const std::vector<Term>& terms, const std::string& css_class);

std::string list_html(const std::vector<std::string>& lines);
std::string paragraphs_html(const std::vector<std::string>& paragraphs);

}  // namespace overbend::report
