// Sentences with figures in them, for findings, reasons and errors.

#pragma once

#include <cstdio>
#include <string>

namespace overbend {

// As printf has it, and as long as it comes out.
template <class... Values>
std::string words(const char* form, Values... values) {
    const int length = std::snprintf(nullptr, 0, form, values...);
    std::string text(static_cast<std::size_t>(length > 0 ? length : 0), '\0');
    std::snprintf(text.data(), text.size() + 1, form, values...);
    return text;
}

}  // namespace overbend
