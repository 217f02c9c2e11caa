#include "scenes/files/case/toml_text.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>

#include "scenes/files/case/nearest_key.h"

namespace overbend::files {

namespace {

constexpr std::size_t widest_line = 110;  // letters, with the key before it

bool is_control(char c) {
    return static_cast<unsigned char>(c) < 0x20 || c == 0x7f;
}

double in_digits(double value, int digits) {
    std::array<char, 40> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value,
                                   std::chars_format::scientific, digits - 1);
    double found = 0.0;
    std::from_chars(text.data(), end.ptr, found);
    return found;
}

}  // namespace

std::string number_text(double value) {
    const double size = std::abs(value);
    const bool plain = size == 0.0 || (size >= 1e-5 && size < 1e15);
    std::array<char, 64> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value,
                                   plain ? std::chars_format::fixed : std::chars_format::scientific);
    std::string found(text.data(), end.ptr);
    if (found.find_first_of(".e") == std::string::npos) found += ".0";
    return found;
}

double roundest(double value, const std::function<bool(double)>& reads_back) {
    for (int digits = 1; digits <= 17; ++digits) {
        const double found = in_digits(value, digits);
        if (reads_back(found)) return found;
    }
    return in_digits(value, 15);
}

std::string quoted(std::string_view text) {
    std::string found = "\"";
    for (const char c : text) {
        std::array<char, 8> code{};
        std::snprintf(code.data(), code.size(), "\\u%04x", static_cast<unsigned char>(c));
        if (is_control(c))
            found += code.data();
        else
            found += (c == '"' || c == '\\') ? std::string("\\") + c : std::string(1, c);
    }
    return found + "\"";
}

std::string comment_text(const std::string& comment) {
    std::string found, line;
    const auto end_line = [&] {
        found += (line.empty() ? "#" : "# " + line) + "\n";
        line.clear();
    };
    for (const char c : comment) {
        if (c == '\n')
            end_line();
        else if (!is_control(c))
            line += c;
    }
    if (!line.empty()) end_line();
    return found;
}

Entries& Entries::as_is(std::string_view key, const std::string& toml) {
    lines_.push_back(std::string(key) + " = " + toml);
    return *this;
}

Entries& Entries::text(std::string_view key, std::string_view value) {
    return as_is(key, files::quoted(value));
}

std::string Entries::lines() const {
    std::string text;
    for (const std::string& line : lines_) text += line + "\n";
    return text;
}

std::string Entries::inline_table() const {
    return "{ " + listed(lines_) + " }";
}

std::string list_text(const std::vector<std::string>& entries) {
    const std::string line = "[ " + listed(entries) + " ]";
    if (line.size() <= widest_line) return line;
    std::string text = "[\n";
    for (const std::string& entry : entries) text += "  " + entry + ",\n";
    return text + "]";
}

std::string numbers_text(const std::vector<double>& values) {
    std::vector<std::string> entries;
    for (const double value : values) entries.push_back(number_text(value));
    return "[" + listed(entries) + "]";
}

std::string texts_text(const std::vector<std::string>& texts) {
    std::vector<std::string> entries;
    for (const std::string& text : texts) entries.push_back(files::quoted(text));
    return "[" + listed(entries) + "]";
}

}  // namespace overbend::files
