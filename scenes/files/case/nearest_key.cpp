#include "scenes/files/case/nearest_key.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <utility>

namespace overbend::files {

int slips_between(std::string_view one, std::string_view other) {
    // Rows of the usual table: slips from the first i letters of one to the first j of other.
    const std::size_t width = other.size() + 1;
    std::vector<int> before_last(width), last(width), row(width);
    std::iota(row.begin(), row.end(), 0);

    for (std::size_t i = 1; i <= one.size(); ++i) {
        std::swap(before_last, last);
        std::swap(last, row);
        row[0] = static_cast<int>(i);
        for (std::size_t j = 1; j < width; ++j) {
            const int changed = one[i - 1] == other[j - 1] ? 0 : 1;
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + changed});
            const bool swapped = i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1];
            if (swapped) row[j] = std::min(row[j], before_last[j - 2] + 1);
        }
    }
    return row[width - 1];
}

std::string nearest_key(std::string_view found, const std::vector<std::string>& known) {
    std::string nearest;
    int fewest = 0;
    for (const std::string& word : known) {
        const int slips = slips_between(found, word);
        if (nearest.empty() || slips < fewest) {
            nearest = word;
            fewest = slips;
        }
    }
    return nearest;
}

std::string listed(const std::vector<std::string>& words, const char* last) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i)
        text += (i == 0 ? "" : i + 1 == words.size() ? last : ", ") + words[i];
    return text;
}

}  // namespace overbend::files
