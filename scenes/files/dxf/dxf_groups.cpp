#include "scenes/files/dxf/dxf_groups.h"

#include <charconv>
#include <cmath>

#include "scenes/files/reading/most.h"
#include "scenes/files/reading/whole_text.h"

namespace overbend::files {

namespace {

const char* const save_again = "save it again as an ASCII DXF file";

std::string without_blanks(const std::string& text, std::size_t begin, std::size_t end) {
    while (begin < end && (text[begin] == ' ' || text[begin] == '\t')) ++begin;
    while (end > begin && (text[end - 1] == ' ' || text[end - 1] == '\t' || text[end - 1] == '\r')) --end;
    return text.substr(begin, end - begin);
}

std::string shown(const std::string& value) {
    return "\"" + value.substr(0, 40) + (value.size() > 40 ? "...\"" : "\"");
}

template <class Number>
bool read_all(const std::string& text, Number& number) {
    const char* begin = text.data();
    const char* const end = begin + text.size();
    if (begin != end && *begin == '+') ++begin;
    const auto result = std::from_chars(begin, end, number);
    return result.ec == std::errc() && result.ptr == end;
}

}  // namespace

std::string read_dxf_text(const std::filesystem::path& file) {
    try {
        return whole_text(file, most::dxf_bytes);
    } catch (const Unreadable& error) {
        throw DxfError(0, error.wrong, error.right);
    }
}

std::vector<DxfGroup> dxf_groups(const std::string& text) {
    if (text.find('\0') != std::string::npos) throw DxfError(0, "it is a binary file, not text", save_again);
    std::vector<DxfGroup> groups;
    int line = 0;
    std::string code_text;
    for (std::size_t begin = 0; begin < text.size();) {
        std::size_t end = text.find('\n', begin);
        if (end == std::string::npos) end = text.size();
        const std::string value = without_blanks(text, begin, end);
        begin = end + 1;
        ++line;
        if (line % 2 == 1) {
            code_text = value;
            if (code_text.empty() && text.find_first_not_of(" \t\r\n", begin) == std::string::npos) break;
            continue;
        }
        DxfGroup group{0, value, line};
        if (!read_all(code_text, group.code) || group.code < -5 || group.code > 1071)
            throw DxfError(line - 1, shown(code_text) + " is not a valid group code",
                           "the file is damaged or not a DXF file; " + std::string(save_again));
        if (group.code != 999) groups.push_back(group);
        if (group.code == 0 && value == "EOF") return groups;
    }
    throw DxfError(line, "it ends without EOF: the file is cut off or not a DXF file", save_again);
}

double dxf_number(const DxfGroup& group) {
    double value = 0.0;
    if (!read_all(group.value, value) || !std::isfinite(value))
        throw DxfError(group.line, shown(group.value) + " is not a finite number", "give one");
    return value;
}

int dxf_whole(const DxfGroup& group) {
    int value = 0;
    if (!read_all(group.value, value))
        throw DxfError(group.line, shown(group.value) + " is not a whole number", "give one");
    return value;
}

}  // namespace overbend::files
