#include "render/picture/numbers.h"

#include <charconv>
#include <cmath>

#include "sim/units.h"

namespace overbend::picture {

std::string fixed(double value, int decimals) {
    if (!std::isfinite(value)) return "\u2013";
    const double unit = std::pow(10.0, -decimals);
    if (std::abs(value) < 0.5 * unit) value = 0.0;  // no minus before zero
    char digits[64];
    const auto end =
        std::to_chars(digits, digits + sizeof digits, std::abs(value), std::chars_format::fixed, decimals);
    if (end.ec != std::errc()) return "\u2013";
    return (value < 0.0 ? "\u2212" : "") + std::string(digits, end.ptr);
}

std::string short_number(double value) {
    std::string text = fixed(value, 2);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text;
}

std::string in_degrees(double angle, int decimals) {
    return fixed(angle / degree, decimals) + "\u00b0";
}

double rounded_up(double value) {
    if (!(value > 0.0) || !std::isfinite(value)) return 1.0;
    const double power = std::pow(10.0, std::floor(std::log10(value)));
    for (const double step : {1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0})
        if (step * power >= value * (1.0 - 1e-9)) return step * power;
    return 10.0 * power;
}

double rounded_down(double value) {
    const double power = std::pow(10.0, std::floor(std::log10(value)));
    return value / power >= 5.0 ? 5.0 * power : value / power >= 2.0 ? 2.0 * power : power;
}

std::string listed(const std::vector<std::string>& names) {
    std::string all;
    for (std::size_t i = 0; i < names.size(); ++i)
        all += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    return all;
}

std::string capital(std::string words) {
    if (!words.empty() && words[0] >= 'a' && words[0] <= 'z')
        words[0] = static_cast<char>(words[0] - 'a' + 'A');
    return words;
}

}  // namespace overbend::picture
