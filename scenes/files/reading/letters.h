// The letters of a text that is read: it is drawn, printed, written into SVG, PDF and JSON, and read again.

#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace overbend::files {

// How many there are; of a text that is UTF-8.
std::size_t letter_count(std::string_view text);

// What is wrong with its letters, in words; empty when nothing is: control characters and line breaks,
// Unicode's noncharacters (U+FDD0 to U+FDEF, and the last two of every plane), which neither XML nor the
// painter takes, marks that turn the direction of what follows, and bytes that are not UTF-8.
std::string wrong_letters(std::string_view text);

// The text with a ? for each letter that is wrong: for a path, which may be any bytes, where it is only
// shown.
std::string shown_letters(std::string_view text);

}  // namespace overbend::files
