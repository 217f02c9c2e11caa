#include "scenes/commands/options.h"

#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <iostream>
#include <nlohmann/json.hpp>
#include <optional>

#include "scenes/documents/tables/table.h"
#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::commands {

namespace {

std::string figure(double value) {
    return words("%.6g", value);
}

// The whole text as a plain decimal number.
std::optional<double> number_in(const std::string& text) {
    if (text.empty() || text.find_first_not_of("0123456789.eE+-") != std::string::npos) return std::nullopt;
    char* end = nullptr;
    const double value = std::strtod(text.c_str(), &end);
    if (*end != '\0' || !std::isfinite(value)) return std::nullopt;
    return value;
}

template <typename Fits>
ValueCheck number_check(const std::string& right, Fits fits) {
    const auto check = [right, fits](const std::string& text) -> std::string {
        const std::optional<double> value = number_in(text);
        if (!value) return "\"" + text + "\" is not a number; give a number " + right;
        if (!fits(*value)) return text + " is out of range; give a number " + right;
        return "";
    };
    return check;
}

std::string with_unit(const std::string& unit) {
    return unit.empty() ? "" : " (" + unit + ")";
}

void require_finite(const nlohmann::ordered_json& value, const std::string& name) {
    if (value.is_number_float() && !std::isfinite(value.get<double>()))
        throw NotSolved(name + " is not a finite number");
    if (!value.is_structured()) return;
    for (const auto& [key, inner] : value.items()) require_finite(inner, value.is_object() ? key : name);
}

}  // namespace

ValueCheck from_to(double low, double high, const std::string& unit) {
    return number_check("from " + figure(low) + " to " + figure(high) + with_unit(unit),
                        [low, high](double value) { return value >= low && value <= high; });
}

ValueCheck between(double low, double high, const std::string& unit) {
    return number_check("above " + figure(low) + " and below " + figure(high) + with_unit(unit),
                        [low, high](double value) { return value > low && value < high; });
}

ValueCheck whole_from_to(int low, int high) {
    const std::string right = "from " + std::to_string(low) + " to " + std::to_string(high);
    const auto check = [low, high, right](const std::string& text) -> std::string {
        const std::optional<double> value = number_in(text);
        const bool whole = value && text.find_first_not_of("0123456789+-") == std::string::npos;
        if (!whole) return "\"" + text + "\" is not a whole number; give one " + right;
        if (*value < low || *value > high) return text + " is out of range; give a whole number " + right;
        return "";
    };
    return check;
}

ValueCheck one_of(const std::vector<std::string>& words) {
    std::string known;
    for (const std::string& word : words) known += (known.empty() ? "" : ", ") + word;
    const auto check = [words, known](const std::string& text) -> std::string {
        if (std::find(words.begin(), words.end(), text) != words.end()) return "";
        return "\"" + text + "\" is not known; give one of " + known;
    };
    return check;
}

void add_quiet(Command& command, Output& output) {
    command.flag("--quiet", output.quiet, "no progress and no remarks on stderr");
}

void add_output(Command& command, Output& output) {
    command.flag("--json", output.json, "print one JSON object instead of a table");
    add_quiet(command, output);
}

void add_width(Command& command, std::optional<double>& width) {
    command
        .option("--width", width,
                "of the strip, mm: plane strain from 8 thicknesses, uniaxial up to 1, in proportion "
                "between them; default: wide")
        .check(from_to(0.05, 1e5, "mm"));
}

bool shows_progress(const Output& output) {
    return !output.quiet && ::isatty(STDERR_FILENO) == 1;
}

void print_json(const nlohmann::ordered_json& object) {
    require_finite(object, "result");
    std::cout << object.dump(2) << "\n";
}

void print_list(const char* heading, const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    std::printf("\n%s\n", heading);
    for (const std::string& line : lines) std::printf("  - %s\n", line.c_str());
}

std::string fixed(double value, int decimals) {
    if (!std::isfinite(value)) throw NotSolved("a result is not a finite number");
    return documents::figure_words(value, decimals);
}

}  // namespace overbend::commands
