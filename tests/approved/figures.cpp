#include "tests/approved/figures.h"

#include <algorithm>
#include <cmath>

#include "sim/words.h"

namespace overbend::tests {

namespace {

using Json = nlohmann::ordered_json;

// What is smaller is far below every tolerance, and would change the file at every rounding.
double rounded(double value) {
    return std::round(value * 1e4) / 1e4;
}

Json rounded_list(const Json& numbers) {
    Json list = Json::array();
    for (const Json& n : numbers) list.push_back(n.is_array() ? rounded_list(n) : Json(rounded(n)));
    return list;
}

Json step_figures(const Json& step) {
    Json bends = Json::object();
    for (const Json& bend : step.at("bends"))
        bends[std::string(bend.at("name"))] = {{"loaded_deg", rounded(bend.at("loaded_deg"))},
                                               {"free_deg", rounded(bend.at("free_deg"))}};
    Json figures = {{"outcome", step.at("outcome")},
                    {"stop_travel_mm", rounded(step.at("stop_travel_mm"))},
                    {"peak_force_kN", rounded(step.at("peak_force_kN"))}};
    const Json& least = step.at("least_clearance");
    if (!least.is_null()) figures["least_clearance_mm"] = rounded(least.at("distance_mm"));
    figures["interferences"] = step.at("interferences").size();
    figures["bends"] = bends;
    return figures;
}

// Every n-th point of a line, and its last.
Json thinned(const Json& line, std::size_t points) {
    Json list = Json::array();
    const std::size_t stride = std::max<std::size_t>(1, line.size() / points);
    for (std::size_t i = 0; i + 1 < line.size(); i += stride) list.push_back(line[i]);
    if (!line.empty()) list.push_back(line.back());
    return rounded_list(list);
}

Json part_figures(const Json& part) {
    Json figures = {{"blank_length_mm", rounded(part.at("blank_length_mm"))},
                    {"bend_lines_mm", Json::object()}};
    for (const Json& line : part.at("bend_lines"))
        figures["bend_lines_mm"][std::string(line.at("name"))] = rounded(line.at("at_mm"));
    if (!part.contains("finished_angles")) return figures;
    for (const Json& angle : part.at("finished_angles"))
        figures["finished_deg"][std::string(angle.at("name"))] = rounded(angle.at("finished_deg"));
    figures["fitted_length_mm"] = rounded(part.at("fitted_blank").at("length_mm"));
    figures["greatest_deviation_mm"] = rounded(part.at("greatest_deviation_mm"));
    figures["profile_mm"] = thinned(part.at("finished_profile_x_y_mm"), 30);
    return figures;
}

// What a figure may differ by: the tolerance of the last word of its place that has one.
double allowed(const Json& tolerances, std::string place, double approved) {
    for (; !place.empty(); place.resize(place.rfind('/'))) {
        const std::string key = place.substr(place.rfind('/') + 1);
        if (tolerances.contains(key)) return tolerances.at(key);
        if (tolerances.contains(key + "_percent"))
            return std::abs(approved) * double(tolerances.at(key + "_percent")) / 100.0;
    }
    return 0.0;
}

// Empty when the two are near enough.
std::string difference(const Json& tolerances, const std::string& place, const Json& approved,
                       const Json& found) {
    if (!approved.is_number() || !found.is_number())
        return approved == found ? "" : place + ": " + found.dump() + ", approved " + approved.dump();
    const double apart = std::abs(double(found) - double(approved)),
                 most = allowed(tolerances, place, approved);
    if (apart <= most) return "";
    return words("%s: %.4f, approved %.4f, %.4f apart, %.4f allowed", place.c_str(), double(found),
                 double(approved), apart, most);
}

}  // namespace

Json usual_tolerances() {
    return {{"loaded_deg", 0.15},         {"free_deg", 0.15},
            {"finished_deg", 0.15},       {"stop_travel_mm", 0.02},
            {"peak_force_kN_percent", 2}, {"least_clearance_mm", 0.05},
            {"blank_length_mm", 0.01},    {"bend_lines_mm", 0.01},
            {"fitted_length_mm", 0.02},   {"greatest_deviation_mm", 0.05},
            {"profile_mm", 0.1}};
}

Json approved_figures(const Json& results) {
    Json steps = Json::object();
    for (const Json& step : results.at("steps")) steps[std::string(step.at("name"))] = step_figures(step);
    return {{"feasible", results.at("feasible")},
            {"findings", results.at("findings").size()},
            {"steps", steps},
            {"part", part_figures(results.at("part"))}};
}

std::vector<std::string> differences(const Json& approved, const Json& found) {
    std::vector<std::string> all;
    const Json before = approved.at("figures").flatten(), now = found.flatten();
    for (const auto& [place, value] : before.items()) {
        if (!now.contains(place))
            all.push_back(place + ": approved, and not there now");
        else if (const std::string line = difference(approved.at("tolerances"), place, value, now.at(place));
                 !line.empty())
            all.push_back(line);
    }
    for (const auto& [place, value] : now.items())
        if (!before.contains(place)) all.push_back(place + ": " + value.dump() + ", not approved");
    return all;
}

}  // namespace overbend::tests
