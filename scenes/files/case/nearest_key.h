// The word somebody probably meant.

#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace overbend::files {

// How many slips of the keyboard lie between two words: a letter left out, put in, changed, or two
// neighbours swapped (Damerau-Levenshtein, each letter moved at most once). Bytes are compared.
int slips_between(std::string_view one, std::string_view other);

// The known word with the fewest slips, the earlier one of equals; empty when none is known.
std::string nearest_key(std::string_view found, const std::vector<std::string>& known);

// "a, b, c"; with another last one "a, b and c".
std::string listed(const std::vector<std::string>& words, const char* last = ", ");

}  // namespace overbend::files
