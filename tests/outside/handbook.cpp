#include "tests/outside/handbook.h"

#include <algorithm>
#include <cstdlib>
#include <regex>
#include <sstream>
#include <stdexcept>

#include "tests/files/own_folder.h"

namespace overbend::tests {

namespace {

// Fields are parted by commas; one with a comma in it stands in quotes, a quote in it is doubled.
std::vector<std::string> fields_of(const std::string& line) {
    std::vector<std::string> fields(1);
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (line[i] == '"' && quoted && i + 1 < line.size() && line[i + 1] == '"')
            fields.back() += line[i++];
        else if (line[i] == '"')
            quoted = !quoted;
        else if (line[i] == ',' && !quoted)
            fields.emplace_back();
        else
            fields.back() += line[i];
    }
    return fields;
}

}  // namespace

std::vector<double> numbers_in(const std::string& text) {
    static const std::regex number(R"(\d+(?:\.\d+)?(?:e[-+]?\d+)?)");
    std::vector<double> found;
    for (std::sregex_iterator it(text.begin(), text.end(), number), end; it != end; ++it)
        found.push_back(std::strtod(it->str().c_str(), nullptr));
    return found;
}

double HandbookRow::number(int index) const {
    const std::vector<double> found = numbers_in(value);
    if (index >= static_cast<int>(found.size())) throw std::out_of_range(id + ": no such number in " + value);
    return found[index];
}

const std::vector<HandbookRow>& handbook() {
    static const std::vector<HandbookRow> all = [] {
        std::vector<HandbookRow> rows;
        std::istringstream lines(bytes_of("tests/outside/handbook.csv"));
        std::string line;
        for (std::getline(lines, line); std::getline(lines, line);) {
            const std::vector<std::string> f = fields_of(line);
            if (f.size() != 7) throw std::runtime_error("handbook.csv: not seven fields: " + line);
            rows.push_back({f[0], f[1], f[2], f[3], f[4], f[5], f[6]});
        }
        return rows;
    }();
    return all;
}

const HandbookRow& handbook_row(const std::string& id) {
    const auto found =
        std::find_if(handbook().begin(), handbook().end(), [&](const HandbookRow& r) { return r.id == id; });
    if (found == handbook().end()) throw std::out_of_range("handbook.csv: no row " + id);
    return *found;
}

std::vector<HandbookRow> handbook_rows(const std::string& beginning) {
    std::vector<HandbookRow> rows;
    for (const HandbookRow& row : handbook())
        if (row.id.compare(0, beginning.size(), beginning) == 0) rows.push_back(row);
    return rows;
}

}  // namespace overbend::tests
