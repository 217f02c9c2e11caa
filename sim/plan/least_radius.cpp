#include "sim/plan/least_radius.h"

#include <algorithm>
#include <array>
#include <map>
#include <vector>

#include "sim/units.h"
#include "sim/words.h"

namespace overbend::plan {

namespace {

// ---- DIN 6935

constexpr std::array<double, 15> din_thickness = {1.0, 1.5,  2.5,  3.0,  4.0,  5.0,  6.0, 7.0,
                                                  8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0};  // to, mm
struct DinRow {
    double strength;                // MPa, up to
    std::array<double, 15> radius;  // mm
};
constexpr std::array<DinRow, 3> din_rows = {
    {{390.0, {1.0, 1.6, 2.5, 3.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 25.0, 28.0, 36.0, 40.0}},
     {490.0, {1.2, 2.0, 3.0, 4.0, 5.0, 8.0, 10.0, 12.0, 16.0, 20.0, 25.0, 28.0, 32.0, 40.0, 45.0}},
     {640.0, {1.6, 2.5, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 25.0, 32.0, 36.0, 45.0, 50.0}}}};

// ---- hardened and tempered spring strip

std::optional<LeastRadius> hardened(const RadiusQuery& query) {
    const double ratio = query.along_rolling ? 8.0 : 5.0;
    return LeastRadius{
        ratio * query.thickness,
        words("hardened and tempered strip from 1200 MPa, bend line %s the rolling direction: %g "
              "thicknesses",
              query.along_rolling ? "along" : "across", ratio),
        "common practice, no source"};
}

std::optional<LeastRadius> din(double strength, const RadiusQuery& query, std::string& why_not) {
    if (strength <= 0.0) {
        why_not = "the card gives no tensile strength, which DIN 6935 needs";
        return std::nullopt;
    }
    const auto row = std::find_if(din_rows.begin(), din_rows.end(),
                                  [&](const DinRow& r) { return strength <= r.strength; });
    const auto to = std::find_if(din_thickness.begin(), din_thickness.end(),
                                 [&](double t) { return query.thickness <= t; });
    std::size_t column = to - din_thickness.begin();
    const bool next = query.along_rolling || query.bend_angle > 120.0 * degree + 1e-9;
    if (next) ++column;
    if (row == din_rows.end() || column >= din_thickness.size()) {
        why_not = "the table of DIN 6935 ends at 640 MPa and 20 mm";
        return std::nullopt;
    }
    const char* const because = query.along_rolling
                                    ? ", one column on for a bend line along the rolling direction"
                                : next ? ", one column on for more than 120 degrees"
                                       : "";
    return LeastRadius{row->radius[column],
                       words("steel to %g MPa, to %g mm%s", row->strength, din_thickness[column], because),
                       "DIN 6935:2011-10"};
}

// ---- EN 10151

struct SpringRow {
    double from, to;                      // MPa
    std::array<double, 4> across, along;  // r/t; 0: not given
};
constexpr std::array<double, 4> spring_thickness = {0.25, 0.5, 0.75, 1.0};  // to, mm
constexpr std::array<SpringRow, 4> spring_rows = {
    {{1150.0, 1300.0, {0.5, 1.0, 2.0, 2.5}, {2.5, 3.0, 4.0, 5.0}},
     {1300.0, 1500.0, {1.5, 2.0, 2.5, 3.0}, {3.0, 4.0, 5.0, 7.0}},
     {1500.0, 1700.0, {2.0, 2.5, 3.0, 3.5}, {4.5, 5.0, 7.0, 9.5}},
     {1700.0, 1900.0, {2.5, 3.0, 3.5, 0.0}, {9.0, 9.5, 11.0, 0.0}}}};

std::optional<LeastRadius> spring(double strength, const RadiusQuery& query, std::string& why_not) {
    const auto row = std::find_if(spring_rows.begin(), spring_rows.end(),
                                  [&](const SpringRow& r) { return strength >= r.from && strength <= r.to; });
    const auto to = std::find_if(spring_thickness.begin(), spring_thickness.end(),
                                 [&](double t) { return query.thickness <= t; });
    double ratio = 0.0;
    if (row != spring_rows.end() && to != spring_thickness.end() && query.thickness >= 0.05)
        ratio = (query.along_rolling ? row->along : row->across)[to - spring_thickness.begin()];
    if (ratio <= 0.0) {
        why_not = "the table of EN 10151 has no such strength and thickness (1150 to 1900 MPa, 0.05 to 1 mm)";
        return std::nullopt;
    }
    return LeastRadius{
        ratio * query.thickness,
        words("1.4310 of %g to %g MPa, to %g mm, bend line %s the rolling direction: %g thicknesses",
              row->from, row->to, *to, query.along_rolling ? "along" : "across", ratio),
        "a supplier's sheet quoting EN 10151"};
}

// ---- Aluminum Association

constexpr double inch = 25.4;
constexpr std::array<double, 8> alloy_thickness = {inch / 64,     inch / 32, inch / 16,    inch / 8,
                                                   3 * inch / 16, inch / 4,  3 * inch / 8, inch / 2};
const std::map<std::string, std::array<double, 8>> alloy_rows = {  // r/t
    {"1100-o", {0, 0, 0, 0, 0.5, 1, 1, 1.5}},       {"1100-h12", {0, 0, 0, 0.5, 1, 1, 1.5, 2}},
    {"1100-h14", {0, 0, 0, 1, 1, 1.5, 2, 2.5}},     {"1100-h16", {0, 0.5, 1, 1.5, 1.5, 2.5, 3, 4}},
    {"1100-h18", {1, 1, 1.5, 2.5, 3, 3.5, 4, 4.5}}, {"5052-o", {0, 0, 0, 0.5, 1, 1, 1.5, 1.5}},
    {"5052-h32", {0, 0, 1, 1.5, 1.5, 1.5, 1.5, 2}}, {"5052-h34", {0, 1, 1.5, 2, 2, 2.5, 2.5, 3}},
    {"5052-h36", {1, 1, 1.5, 2.5, 3, 3.5, 4, 4.5}}, {"5052-h38", {1, 1.5, 2.5, 3, 4, 5, 5.5, 6.5}},
    {"6061-o", {0, 0, 0, 1, 1, 1, 1.5, 2}},         {"6061-t4", {0, 0, 1, 1.5, 2.5, 3, 3.5, 4}},
    {"6061-t6", {1, 1, 1.5, 2.5, 3, 3.5, 4.5, 5}}};

std::optional<LeastRadius> aluminium(const std::string& alloy, const RadiusQuery& query,
                                     std::string& why_not) {
    const auto row = alloy_rows.find(alloy);
    // what is rolled to 1.6 mm is the table's 1/16 in
    const auto to = std::find_if(alloy_thickness.begin(), alloy_thickness.end(),
                                 [&](double t) { return query.thickness <= 1.02 * t; });
    if (row == alloy_rows.end() || to == alloy_thickness.end()) {
        why_not = "the Aluminum Association's table has no such alloy, or ends at 12.7 mm";
        return std::nullopt;
    }
    const double ratio = row->second[to - alloy_thickness.begin()];
    return LeastRadius{ratio * query.thickness,
                       words("aluminium %s, to %.3g mm: %g thicknesses", alloy.c_str(), *to, ratio),
                       "Aluminum Association, 90 degree cold bends"};
}

// ---- Kalpakjian and Schmid

const std::map<std::string, double> textbook_rows = {
    {"stainless-annealed", 0.5}, {"stainless-hard", 6.0}, {"brass-soft", 0.0}, {"brass-hard", 2.0}};

}  // namespace

std::optional<LeastRadius> least_radius(const material::Card& card, const RadiusQuery& query,
                                        std::string& why_not) {
    if (query.bend_angle > 170.0 * degree) {
        why_not = "the tables do not cover hems";
        return std::nullopt;
    }
    constexpr double hardened_from = 1200.0;  // MPa
    if (card.metal == "steel" && card.tensile_strength >= hardened_from) return hardened(query);
    if (card.metal == "steel") return din(card.tensile_strength, query, why_not);
    if (card.metal == "stainless-1.4310") return spring(card.tensile_strength, query, why_not);
    const std::string alloys = "aluminium-";
    if (card.metal.rfind(alloys, 0) == 0) return aluminium(card.metal.substr(alloys.size()), query, why_not);
    const auto row = textbook_rows.find(card.metal);
    if (row != textbook_rows.end())
        return LeastRadius{row->second * query.thickness,
                           words("%s: %g thicknesses", card.metal.c_str(), row->second),
                           "Kalpakjian and Schmid, table 16.3, from memory"};
    why_not =
        card.metal.empty() ? "the card names no metal, so no table can be chosen" : "no table has this metal";
    return std::nullopt;
}

}  // namespace overbend::plan
