#include "scenes/documents/bend_table/bend_table_text.h"

#include <nlohmann/json.hpp>

#include "scenes/documents/tables/csv.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

using job::BendTableRow;
using nlohmann::ordered_json;

// A figure of a row: its key, its decimals.
struct Figure {
    const char* key;
    int decimals;
    std::optional<double> (*of)(const BendTableRow& row);
};

const std::vector<Figure>& figures() {
    using Known = std::optional<double>;
    static const std::vector<Figure> all = {
        {"inside_radius_mm", 3, [](const BendTableRow& r) { return Known(r.inside_radius); }},
        {"bend_deduction_mm", 3, [](const BendTableRow& r) { return Known(r.deduction); }},
        {"bend_allowance_mm", 3, [](const BendTableRow& r) { return Known(r.allowance); }},
        {"k_factor", 3, [](const BendTableRow& r) { return Known(r.k_factor); }},
        {"springback_deg", 2, [](const BendTableRow& r) { return Known(r.springback / degree); }},
        {"angle_spread_deg", 2,
         [](const BendTableRow& r) { return r.spread ? Known(r.spread->whole() / degree) : Known(); }},
        {"loaded_deg", 2, [](const BendTableRow& r) { return Known(r.loaded / degree); }},
        {"travel_mm", 3, [](const BendTableRow& r) { return Known(r.travel); }},
        {"peak_force_kN_per_m", 1, [](const BendTableRow& r) { return Known(r.force); }},
        {"least_flange_mm", 2, [](const BendTableRow& r) { return Known(r.least_flange); }},
        {"din_6935_deduction_mm", 3, [](const BendTableRow& r) { return Known(r.din_deduction); }},
        {"din_6935_allowance_mm", 3, [](const BendTableRow& r) { return Known(r.din_allowance); }}};
    return all;
}

Cell cell(const BendTableRow& row, double value) {
    return row.made ? Cell(value) : Cell();
}

}  // namespace

std::vector<Table> bend_tables(const job::BendTableOrder& order, const std::vector<BendTableRow>& rows) {
    std::vector<Table> tables;
    for (std::size_t t = 0; t < order.tools.size(); ++t) {
        Table table{order.tools[t].name,
                    {{"Bend angle", "deg", 1, "Bend angle"},
                     {"Inside radius", "mm", 2, "Inside radius"},
                     {"Bend deduction", "mm", 2, "De- duction"},
                     {"Bend allowance", "mm", 2, "Allow- ance"},
                     {"k-factor", "", 3, "k"},
                     {"Springback", "deg", 2, "Spring- back"},
                     {"Angle +-", "deg", 2, "Angle +-"},
                     {"Force", "kN/m", 0, "Force"},
                     {"Least flange", "mm", 2, "Least flange"},
                     {"Deduction, DIN 6935", "mm", 2, "Ded., DIN"},
                     {"Allowance, DIN 6935", "mm", 2, "Allow., DIN"}},
                    {}};
        for (const BendTableRow& r : rows) {
            if (r.tools != t) continue;
            table.rows.push_back({r.angle / degree, cell(r, r.inside_radius), cell(r, r.deduction),
                                  cell(r, r.allowance), cell(r, r.k_factor), cell(r, r.springback / degree),
                                  r.spread ? Cell(r.spread->whole() / degree) : Cell(), cell(r, r.force),
                                  cell(r, r.least_flange), cell(r, r.din_deduction),
                                  cell(r, r.din_allowance)});
            if (!r.made) table.notes.push_back(words("%.1f deg is not made: ", r.angle / degree) + r.why);
        }
        tables.push_back(std::move(table));
    }
    return tables;
}

std::string bend_table_csv(const job::BendTableOrder& order, const std::vector<BendTableRow>& rows) {
    std::string text = "material,thickness_mm,tools,die_opening_mm,shoulder_mm,nose_mm,bend_angle_deg";
    for (const Figure& f : figures()) text += std::string(",") + f.key;
    text += ",remark\n";
    for (const BendTableRow& r : rows) {
        const job::TableTools& t = order.tools[r.tools];
        text +=
            csv_words(order.material.name) + words(",%.6g,", order.thickness) + csv_words(t.name) +
            words(",%.6g,%.6g,%.6g,%.6g", t.die_opening, t.shoulder_radius, t.nose_radius, r.angle / degree);
        for (const Figure& f : figures()) {
            const std::optional<double> value = r.made ? f.of(r) : std::nullopt;
            text += "," + (value ? figure_words(*value, f.decimals) : "");
        }
        text += "," + (r.made ? "" : csv_words("not made: " + r.why)) + "\n";
    }
    return text;
}

ordered_json bend_table_json(const job::BendTableOrder& order, const std::vector<BendTableRow>& rows) {
    ordered_json list = ordered_json::array();
    for (const BendTableRow& r : rows) {
        const job::TableTools& t = order.tools[r.tools];
        ordered_json row = {{"tools", t.name},
                            {"die_opening_mm", t.die_opening},
                            {"shoulder_mm", t.shoulder_radius},
                            {"nose_mm", t.nose_radius},
                            {"bend_angle_deg", r.angle / degree}};
        for (const Figure& f : figures()) {
            const std::optional<double> value = r.made ? f.of(r) : std::nullopt;
            row[f.key] = value ? ordered_json(*value) : ordered_json(nullptr);
        }
        if (!r.made) row["reason"] = r.why;
        list.push_back(std::move(row));
    }
    return {{"material", order.material.name}, {"thickness_mm", order.thickness}, {"rows", list}};
}

std::vector<std::string> bend_table_notes() {
    return {
        "Blank = sum of the legs, measured outside, less the bend deductions. The leg of a bend of up to 90 "
        "degrees ends "
        "where the outer faces cross, of a sharper one at the outer tangent.",
        "Blank = sum of the flats between the tangent points and the bend allowances. Allowance = angle (r + "
        "k s).",
        "k is a figure for an arc of that inside radius: a bend that is sharper in its middle than beside it "
        "may have 0.5 or more.",
        "Inside radius, springback, force: pressed to the bend angle free. Force per metre of strip width.",
        "Angle +-: another coil of the grade, thickness, friction, and what the mechanics was off finite "
        "elements.",
        "Least flange: the leg, measured outside, that stays on the die's shoulder to the end of the stroke.",
        "DIN 6935 for the same inside radius; legs are measured in the same way."};
}

}  // namespace overbend::documents
