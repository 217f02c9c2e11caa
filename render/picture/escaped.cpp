#include "render/picture/escaped.h"

#include <cstddef>

namespace overbend::picture {

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

// U+FFFE and U+FFFF, which no XML may have.
bool is_no_character(const std::string& letter) {
    return letter == "\xef\xbf\xbe" || letter == "\xef\xbf\xbf";
}

}  // namespace

std::string escaped(const std::string& text) {
    std::string safe;
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t length = letter_at(text, i);
        const char c = text[i];
        const bool control = (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t') || c == 0x7f;
        if (length == 0 || control || is_no_character(text.substr(i, length)))
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

}  // namespace overbend::picture
