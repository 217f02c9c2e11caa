#include "scenes/documents/tables/csv.h"

#include <array>
#include <charconv>

namespace overbend::documents {

std::string csv_words(const std::string& text) {
    std::string quoted = "\"";
    for (const char c : text) quoted += c == '"' ? "\"\"" : std::string(1, c == '\n' ? ' ' : c);
    return quoted + "\"";
}

std::string csv_number(double value, int digits) {
    std::array<char, 64> text{};
    if (value == 0.0) value = 0.0;  // no sign
    const auto end =
        std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::general, digits);
    return {text.data(), end.ptr};
}

bool csv_fields(const std::string& line, std::vector<std::string>& fields) {
    fields.assign(1, "");
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const char c = line[i];
        if (c == '"' && quoted && i + 1 < line.size() && line[i + 1] == '"')
            fields.back() += c, ++i;
        else if (c == '"')
            quoted = !quoted;
        else if (c == ',' && !quoted)
            fields.emplace_back();
        else
            fields.back() += c;
    }
    return !quoted;
}

}  // namespace overbend::documents
