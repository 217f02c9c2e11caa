// Where a number must lie.

#pragma once

#include <string>
#include <vector>

namespace overbend::files {

using Words = std::vector<std::string>;

struct Range {
    enum class End { included, excluded };
    double low = 0.0;
    double high = 0.0;
    End low_end = End::included;
    End high_end = End::included;

    bool holds(double value) const;  // false for a NaN
};
constexpr Range from_to(double low, double high) {
    return {low, high};
}
constexpr Range above_to(double low, double high) {
    return {low, high, Range::End::excluded};
}
constexpr Range from_below(double low, double high) {
    return {low, high, Range::End::included, Range::End::excluded};
}
constexpr Range above_below(double low, double high) {
    return {low, high, Range::End::excluded, Range::End::excluded};
}

// "from 0.05 to 20", "above 0 and below 180".
std::string range_words(const Range& range);

}  // namespace overbend::files
