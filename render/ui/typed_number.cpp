#include "render/ui/typed_number.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>

namespace overbend::ui {

namespace {

std::string trimmed(const std::string& text) {
    const std::size_t first = text.find_first_not_of(" \t");
    if (first == std::string::npos) return "";
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

// What stands behind the figures: " mm".
std::string unit_of(const char* format) {
    const std::string all = format;
    const std::size_t end = all.find_first_of("gfe", all.find('%'));
    return end == std::string::npos ? "" : trimmed(all.substr(end + 1));
}

}  // namespace

std::string shown_number(double value, const NumberField& field) {
    char text[64];
    std::snprintf(text, sizeof text, field.format, value);
    return text;
}

TypedNumber read_typed(const std::string& given, const NumberField& field) {
    const std::string text = trimmed(given);
    if (text.empty()) return {{}, "nothing was typed"};
    std::string figures = text;
    const std::string unit = unit_of(field.format);
    if (!unit.empty() && figures.size() > unit.size() &&
        figures.compare(figures.size() - unit.size(), unit.size(), unit) == 0)
        figures = trimmed(figures.substr(0, figures.size() - unit.size()));
    const std::string refused = "\"" + text + "\" is not a number";
    if (figures.find_first_not_of("0123456789+-.,eE") != std::string::npos) return {{}, refused};
    const std::size_t comma = figures.find(',');
    if (comma != std::string::npos) {
        // "1,234.5" may mean either.
        if (figures.find_first_of(".,", comma + 1) != std::string::npos || figures.find('.') < comma)
            return {{}, refused + "; write one comma or point"};
        figures[comma] = '.';
    }
    char* end = nullptr;
    const double value = std::strtod(figures.c_str(), &end);
    if (end != figures.c_str() + figures.size() || !std::isfinite(value)) return {{}, refused};
    // As it is shown: a limit of 0.1 takes what is shown as 0.1.
    if (value < field.low && shown_number(value, field) != shown_number(field.low, field))
        return {{}, text + " is less than " + shown_number(field.low, field)};
    if (value > field.high && shown_number(value, field) != shown_number(field.high, field))
        return {{}, text + " is more than " + shown_number(field.high, field)};
    return {std::fmin(std::fmax(value, field.low), field.high), ""};
}

}  // namespace overbend::ui
