#include "tests/case/every_key.h"

#include <map>
#include <sstream>

namespace overbend::tests {

namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) text += line + "\n";
    return text;
}

// "tool.faces" with the places of the latest tables of each list put in: "tool[2].faces[1]".
std::string placed(const std::string& header, const std::map<std::string, int>& count) {
    std::string plain, path;
    std::istringstream stream(header);
    for (std::string part; std::getline(stream, part, '.');) {
        plain += (plain.empty() ? "" : ".") + part;
        path += (path.empty() ? "" : ".") + part;
        const auto found = count.find(plain);
        if (found != count.end() && found->second > 0) path += "[" + std::to_string(found->second) + "]";
    }
    return path;
}

// A new entry of a list starts the lists within it again.
void count_entry(const std::string& header, std::map<std::string, int>& count) {
    ++count[header];
    for (auto& [other, entries] : count) {
        if (other.rfind(header + ".", 0) == 0) entries = 0;
    }
}

}  // namespace

std::string KeyLine::plain_path() const {
    std::string plain;
    bool inside = false;
    for (const char c : path()) {
        if (c == '[') inside = true;
        if (!inside) plain += c;
        if (c == ']') inside = false;
    }
    return plain;
}

std::vector<KeyLine> every_key(const std::string& text) {
    std::vector<KeyLine> found;
    std::map<std::string, int> count;
    std::string table;
    int table_line = 1, line = 0;
    for (const std::string& content : lines_of(text)) {
        ++line;
        if (content.empty()) continue;
        if (content[0] == '[') {
            const bool list = content[1] == '[';
            const std::size_t marks = list ? 2 : 1;
            const std::string header = content.substr(marks, content.size() - 2 * marks);
            if (list) count_entry(header, count);
            table = placed(header, count);
            table_line = line;
            continue;
        }
        const std::size_t equals = content.find(" = ");
        found.push_back({line, table_line, table, content.substr(0, equals), content.substr(equals + 3)});
    }
    return found;
}

std::string with_line(const std::string& text, int line, const std::string& replacement) {
    std::vector<std::string> lines = lines_of(text);
    lines.at(line - 1) = replacement;
    return joined(lines);
}

std::string without_line(const std::string& text, int line) {
    std::vector<std::string> lines = lines_of(text);
    lines.erase(lines.begin() + (line - 1));
    return joined(lines);
}

}  // namespace overbend::tests
