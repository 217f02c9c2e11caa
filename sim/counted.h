// Numbers with their noun in the right form: "1 bend", "2 bends", "0 guesses".

#pragma once

#include <cstddef>
#include <string>

namespace overbend {

// more: the plural where an s does not make it.
inline std::string counted(std::size_t count, const std::string& one, const std::string& more = "") {
    return std::to_string(count) + " " + (count == 1 ? one : more.empty() ? one + "s" : more);
}

}  // namespace overbend
