#include "scenes/files/reading/letters.h"

#include <algorithm>
#include <cstdint>
#include <cstdio>

namespace overbend::files {

namespace {

struct Letter {
    std::uint32_t code = 0;
    std::size_t bytes = 0;  // 0: not UTF-8
};

bool follows(char c) {
    return (static_cast<unsigned char>(c) & 0xc0) == 0x80;
}

// The first one (RFC 3629).
Letter first_letter(std::string_view text) {
    const auto first = static_cast<unsigned char>(text.front());
    if (first < 0x80) return {first, 1};
    const std::size_t bytes = first >= 0xf0 ? 4 : first >= 0xe0 ? 3 : 2;
    if (first < 0xc2 || first > 0xf4 || text.size() < bytes) return {};
    std::uint32_t code = first & (0x7fu >> bytes);
    for (std::size_t i = 1; i < bytes; ++i) {
        if (!follows(text[i])) return {};
        code = code << 6 | (static_cast<unsigned char>(text[i]) & 0x3fu);
    }
    const bool too_long = (bytes == 3 && code < 0x800) || (bytes == 4 && code < 0x10000);
    const bool no_letter = (code >= 0xd800 && code <= 0xdfff) || code > 0x10ffff;
    return too_long || no_letter ? Letter{} : Letter{code, bytes};
}

bool ends_or_controls(std::uint32_t code) {
    return code < 0x20 || (code >= 0x7f && code < 0xa0) || code == 0x2028 || code == 0x2029;
}

bool is_noncharacter(std::uint32_t code) {
    return (code >= 0xfdd0 && code <= 0xfdef) || (code & 0xfffe) == 0xfffe;
}

bool turns_direction(std::uint32_t code) {
    return (code >= 0x202a && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069);
}

std::string code_words(std::uint32_t code) {
    char words[16];
    std::snprintf(words, sizeof words, "U+%04X", static_cast<unsigned>(code));
    return words;
}

std::string wrong_letter(const Letter& letter) {
    if (letter.bytes == 0) return "the text is not UTF-8";
    if (ends_or_controls(letter.code)) return "the text has a line break or a control character";
    if (is_noncharacter(letter.code))
        return "the text has " + code_words(letter.code) + ", which is no character and cannot be drawn";
    if (turns_direction(letter.code))
        return "the text has " + code_words(letter.code) + ", which turns the direction of writing";
    return "";
}

}  // namespace

std::size_t letter_count(std::string_view text) {
    return static_cast<std::size_t>(
        std::count_if(text.begin(), text.end(), [](char c) { return !follows(c); }));
}

std::string wrong_letters(std::string_view text) {
    for (; !text.empty(); text.remove_prefix(first_letter(text).bytes)) {
        const std::string wrong = wrong_letter(first_letter(text));
        if (!wrong.empty()) return wrong;
    }
    return "";
}

std::string shown_letters(std::string_view text) {
    std::string shown;
    while (!text.empty()) {
        const Letter letter = first_letter(text);
        const std::size_t bytes = std::max<std::size_t>(1, letter.bytes);
        shown += wrong_letter(letter).empty() ? std::string(text.substr(0, bytes)) : "?";
        text.remove_prefix(bytes);
    }
    return shown;
}

}  // namespace overbend::files
