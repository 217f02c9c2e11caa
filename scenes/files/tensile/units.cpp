#include "scenes/files/tensile/units.h"

#include <algorithm>
#include <cctype>
#include <map>

namespace overbend::files {

namespace {

using Factors = std::vector<std::pair<std::string, double>>;

const Factors& factors_of(Quantity quantity) {
    static const Factors none,
        strain = {{"%", 0.01},          {"percent", 0.01}, {"per cent", 0.01},     {"pct", 0.01},
                  {"-", 1.0},           {"1", 1.0},        {"mm/mm", 1.0},         {"m/m", 1.0},
                  {"in/in", 1.0},       {"mm/m", 1e-3},    {"\u00b5\u03b5", 1e-6}, {"ue", 1e-6},
                  {"microstrain", 1e-6}},
        length = {{"mm", 1.0},  {"cm", 10.0},   {"m", 1000.0},    {"um", 1e-3},   {"\u00b5m", 1e-3},
                  {"in", 25.4}, {"inch", 25.4}, {"inches", 25.4}, {"mil", 0.0254}},
        force = {{"n", 1.0},          {"kn", 1000.0},     {"mn", 1e6},         {"lbf", 4.4482216},
                 {"lb", 4.4482216},   {"lbs", 4.4482216}, {"klbf", 4448.2216}, {"kip", 4448.2216},
                 {"kips", 4448.2216}, {"kgf", 9.80665}},
        stress = {{"mpa", 1.0},       {"n/mm2", 1.0},       {"n/mm^2", 1.0},    {"n/mm\u00b2", 1.0},
                  {"gpa", 1000.0},    {"kpa", 1e-3},        {"pa", 1e-6},       {"psi", 0.0068947573},
                  {"ksi", 6.8947573}, {"kgf/mm2", 9.80665}, {"kg/mm2", 9.80665}};
    switch (quantity) {
        case Quantity::strain:
        case Quantity::width_strain:
            return strain;
        case Quantity::elongation:
        case Quantity::width:
            return length;
        case Quantity::force:
            return force;
        case Quantity::stress:
            return stress;
        case Quantity::ignored:
            return none;
    }
    return none;
}

bool is_unit(const std::string& word) {
    for (const Quantity q : {Quantity::strain, Quantity::elongation, Quantity::force, Quantity::stress})
        if (word != "1" && word != "-" && unit_factor(q, word)) return true;
    return false;
}

}  // namespace

const char* quantity_word(Quantity quantity) {
    static const char* const names[] = {"nothing", "strain", "elongation",  "force",
                                        "stress",  "width",  "width-strain"};
    return names[static_cast<int>(quantity)];
}

std::optional<double> unit_factor(Quantity quantity, const std::string& unit) {
    for (const auto& [name, factor] : factors_of(quantity))
        if (name == lower(unit)) return factor;
    return std::nullopt;
}

std::vector<std::string> known_units(Quantity quantity) {
    std::vector<std::string> names;
    for (const auto& [name, factor] : factors_of(quantity)) names.push_back(name);
    return names;
}

std::string lower(std::string text) {
    for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return text;
}

std::string unit_in(const std::string& heading) {
    for (const auto& [open, close] : {std::pair{'(', ')'}, {'[', ']'}}) {
        const std::size_t from = heading.rfind(open), to = heading.rfind(close);
        if (from != std::string::npos && to != std::string::npos && to > from + 1) {
            std::string inner = heading.substr(from + 1, to - from - 1);
            inner.erase(std::remove(inner.begin(), inner.end(), ' '), inner.end());
            return inner == "percent" ? "%" : inner;
        }
    }
    const std::size_t last = heading.find_last_of(" _,");
    if (last != std::string::npos && is_unit(heading.substr(last + 1))) return heading.substr(last + 1);
    if (!heading.empty() && heading.back() == '%') return "%";
    return "";
}

}  // namespace overbend::files
