#include "tests/files/rounding.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <regex>

namespace overbend::tests {

namespace {

// What one in the last place of a printed number is worth.
double last_place(const std::string& number) {
    const std::size_t dot = number.find('.'), e = std::min(number.find('e'), number.size());
    const double places = dot < e ? static_cast<double>(e - dot - 1) : 0.0;
    const double exponent = e < number.size() ? std::strtod(number.c_str() + e + 1, nullptr) : 0.0;
    return std::pow(10.0, exponent - places);
}

// Whole numbers are counts or figures of a source; only others are rounded here. A last digit that is 0 is
// not printed, so the finer of both counts as the last place, ten times over.
bool nearly_one_number(const std::string& a, const std::string& b) {
    if (a == b) return true;
    const auto whole = [](const std::string& n) { return n.find_first_of(".e") == std::string::npos; };
    if (whole(a) && whole(b)) return false;
    const double step = std::max(last_place(a), last_place(b));
    const double finer = std::min(last_place(a), last_place(b));
    const double difference = std::abs(std::strtod(a.c_str(), nullptr) - std::strtod(b.c_str(), nullptr));
    return difference < 2.01 * (step > 5.0 * finer ? finer : step);
}

}  // namespace

bool same_but_for_rounding(const std::string& a, const std::string& b) {
    static const std::regex number(R"(\d+(?:\.\d+)?(?:e[-+]\d+)?)");
    if (std::regex_replace(a, number, "0") != std::regex_replace(b, number, "0")) return false;
    const std::sregex_iterator end;
    std::sregex_iterator x(a.begin(), a.end(), number), y(b.begin(), b.end(), number);
    for (; x != end && y != end; ++x, ++y)
        if (!nearly_one_number(x->str(), y->str())) return false;
    return x == end && y == end;
}

}  // namespace overbend::tests
