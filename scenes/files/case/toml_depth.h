// How deep the tables of a TOML text go, found before the text is parsed: the library's parser and the
// tables that it makes call themselves for each level, and a file of 80 kB would overflow their stack.

#pragma once

#include <optional>
#include <string>

namespace overbend::files {

struct TooDeep {
    int line = 1, column = 1;  // where it goes too deep
    std::string wrong, right;
};

// A key of more parts, or brackets deeper, than scenes/files/reading/most.h allows. Of a text that is no TOML
// only what stands before the mistake is looked at as the parser would.
std::optional<TooDeep> too_deep(const std::string& text);

}  // namespace overbend::files
