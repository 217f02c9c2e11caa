#include "scenes/case/toml_text.h"

#include <charconv>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace overbend::scenes {

namespace {

constexpr double degree = 3.14159265358979323846 / 180.0;

std::string with_point(std::string text) {
    if (text.find_first_of(".eE") == std::string::npos) text += ".0";
    return text;
}

}  // namespace

std::string number_text(double value) {
    char text[64];
    const std::to_chars_result end = std::to_chars(text, text + sizeof text, value);
    return with_point(std::string(text, end.ptr));
}

std::string degrees_text(double angle) {
    char text[64];
    for (int digits = 3; digits <= 17; ++digits) {
        std::snprintf(text, sizeof text, "%.*g", digits, angle / degree);
        if (std::abs(std::strtod(text, nullptr) * degree - angle) <= 3e-16 * std::abs(angle)) break;
    }
    return with_point(text);
}

std::string quoted_text(const std::string& text) {
    std::string quoted = "\"";
    for (const char c : text) {
        char code[8];
        if (c == '"' || c == '\\')
            quoted += std::string("\\") + c;
        else if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f)
            std::snprintf(code, sizeof code, "\\u%04x", static_cast<unsigned>(static_cast<unsigned char>(c))),
                quoted += code;
        else
            quoted += c;
    }
    return quoted + "\"";
}

Inline& Inline::put(const char* key, const std::string& value) {
    body_ += (body_.empty() ? "" : ", ") + std::string(key) + " = " + value;
    return *this;
}

Lines& Lines::put(const char* key, const std::string& value) {
    text_ += std::string(key) + " = " + value + "\n";
    return *this;
}

Lines& Lines::header(const std::string& name) {
    text_ += "\n" + name + "\n";
    return *this;
}

Lines& Lines::raw(const std::string& line) {
    text_ += line + "\n";
    return *this;
}

Lines& Lines::list(const char* key, const std::vector<std::string>& entries) {
    text_ += std::string(key) + " = [\n";
    for (const std::string& entry : entries) text_ += "  " + entry + ",\n";
    text_ += "]\n";
    return *this;
}

}  // namespace overbend::scenes
