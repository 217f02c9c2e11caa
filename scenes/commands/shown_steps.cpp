#include "scenes/commands/shown_steps.h"

#include <algorithm>
#include <optional>
#include <set>
#include <sstream>

#include "scenes/commands/options.h"

namespace overbend::commands {

namespace {

// A whole number, and nothing else.
std::optional<int> step_number(const std::string& text) {
    if (text.empty() || text.size() > 6 || text.find_first_not_of("0123456789") != std::string::npos)
        return {};
    return std::stoi(text);
}

std::string known_steps(const files::Case& c) {
    std::string known;
    for (std::size_t i = 0; i < c.steps.size(); ++i)
        known += (i > 0 ? ", " : "") + std::to_string(i + 1) + " " + c.steps[i].name;
    return known;
}

std::optional<int> find_step(const files::Case& c, const std::string& name) {
    for (std::size_t i = 0; i < c.steps.size(); ++i)
        if (c.steps[i].name == name) return static_cast<int>(i);
    const std::optional<int> number = step_number(name);
    if (number && *number >= 1 && *number <= static_cast<int>(c.steps.size())) return *number - 1;
    return {};
}

std::string trimmed(const std::string& text) {
    const std::size_t from = text.find_first_not_of(' ');
    if (from == std::string::npos) return "";
    return text.substr(from, text.find_last_not_of(' ') - from + 1);
}

}  // namespace

int step_named(const files::Case& c, const std::string& name, const std::string& option) {
    const std::optional<int> found = find_step(c, name);
    if (!found)
        complain(option, "there is no step \"" + name + "\"; give a name or number of: " + known_steps(c));
    return *found;
}

std::vector<int> chosen_steps(const files::Case& c, const std::string& list) {
    std::set<int> chosen;
    if (list == "all")
        for (int i = 0; i < static_cast<int>(c.steps.size()); ++i) chosen.insert(i);
    std::istringstream parts(list == "all" ? "" : list);
    for (std::string part; std::getline(parts, part, ',');) {
        part = trimmed(part);
        const std::size_t dash = part.find('-');
        const std::optional<int> first = step_number(part.substr(0, std::min(dash, part.size())));
        const std::optional<int> last =
            dash == std::string::npos ? std::nullopt : step_number(part.substr(dash + 1));
        if (!first || !last || find_step(c, part)) {
            chosen.insert(step_named(c, part, "--steps"));
            continue;
        }
        if (*first > *last)
            complain("--steps", "\"" + part + "\" runs backwards; give the smaller number first");
        for (const int end : {*first, *last}) step_named(c, std::to_string(end), "--steps");
        for (int i = *first; i <= *last; ++i) chosen.insert(i - 1);
    }
    if (chosen.empty()) complain("--steps", "no step given; give \"all\", or one of: " + known_steps(c));
    return {chosen.begin(), chosen.end()};
}

}  // namespace overbend::commands
