// overbend list: the material cards, racks of tools, presses and tool steels that a case can name.

#include <algorithm>
#include <cmath>
#include <functional>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "scenes/commands/commands.h"
#include "scenes/commands/options.h"
#include "scenes/documents/tables/table.h"
#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/read_card.h"
#include "scenes/files/case/read_shop.h"
#include "scenes/files/case/read_tools.h"
#include "scenes/files/case/tool_sizes.h"
#include "sim/material/flow_curve.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::commands {

namespace {

using Json = nlohmann::ordered_json;

constexpr double proof_strain = 0.002;  // plastic strain at which a yield strength is read

struct ListCommand {
    std::string what = "all";
    Output output;
};

// A column of figures: its key in the JSON, its head and unit in the table, and how to read it.
template <class Thing>
struct Figure {
    std::string key, head, unit;
    std::function<std::optional<double>(const Thing&)> of;
};

std::string cell(std::optional<double> value) {
    return value ? words(*value >= 100.0 ? "%.0f" : "%.4g", *value) : "-";
}

// What is listed, as tables or for the JSON.
struct Lists {
    Output output;
    Json json = {{"format", 1}};
    int tables = 0;  // printed
};

void print(Lists& lists, const documents::Table& table) {
    if (lists.output.json || lists.output.quiet) return;
    std::cout << (lists.tables++ > 0 ? "\n" : "") << documents::table_text(table);
}

template <class Thing>
void add_list(const std::string& title, const std::string& key, const std::vector<Thing>& things,
              const std::vector<Figure<Thing>>& figures, Lists& lists) {
    documents::Table table{title, {{"Name"}}, {}};
    for (const Figure<Thing>& f : figures) table.columns.push_back({f.head, f.unit, 0});
    table.columns.push_back({"Title"});
    for (const Thing& thing : things) {
        Json one = {{"name", thing.name}, {"title", thing.title}};
        std::vector<documents::Cell> row = {thing.name};
        for (const Figure<Thing>& f : figures) {
            const std::optional<double> value = f.of(thing);
            one[f.key] = value ? Json(*value) : Json(nullptr);
            row.emplace_back(cell(value));
        }
        row.emplace_back(thing.title);
        lists.json[key].push_back(one);
        table.rows.push_back(row);
    }
    print(lists, table);
}

// What a file gives; 0 stands for nothing given.
std::optional<double> if_given(double value) {
    return value > 0.0 ? std::optional(value) : std::nullopt;
}

void list_materials(Lists& lists) {
    using material::Card;
    static const std::vector<Figure<Card>> figures = {
        {"yield_MPa", "Yield", "MPa",
         [](const Card& c) {
             return material::flow_point(c.hardening, c.youngs_modulus, proof_strain).stress;
         }},
        {"tensile_strength_MPa", "Strength", "MPa",
         [](const Card& c) { return if_given(c.tensile_strength); }},
        {"elongation_percent", "Elongation", "%",
         [](const Card& c) { return if_given(100.0 * c.elongation); }},
        {"reduction_of_area_percent", "Reduction of area", "%",
         [](const Card& c) { return if_given(100.0 * c.reduction_of_area); }},
        {"youngs_modulus_MPa", "E", "MPa", [](const Card& c) { return c.youngs_modulus; }},
        {"density_kg_m3", "Density", "kg/m3", [](const Card& c) { return if_given(c.density); }}};
    std::vector<Card> cards;
    for (const std::string& name : files::known_cards()) cards.push_back(files::read_card(name, {}));
    add_list("Material cards", "materials", cards, figures, lists);
}

struct NamedPress : files::Press {
    std::string name;
};

void list_presses(Lists& lists) {
    static const std::vector<Figure<NamedPress>> figures = {
        {"force_kN", "Force", "kN", [](const NamedPress& p) { return p.force; }},
        {"stroke_mm", "Stroke", "mm", [](const NamedPress& p) { return p.stroke; }},
        {"daylight_mm", "Daylight", "mm", [](const NamedPress& p) { return p.daylight; }},
        {"throat_mm", "Throat", "mm", [](const NamedPress& p) { return p.throat; }},
        {"line_load_kN_per_m", "Line load", "kN/m", [](const NamedPress& p) { return p.line_load; }}};
    std::vector<NamedPress> presses;
    for (const std::string& name : files::known_names(files::presses))
        presses.push_back({files::read_press_card(name, {}), name});
    add_list("Presses", "presses", presses, figures, lists);
}

void list_steels(Lists& lists) {
    using shop::ToolSteel;
    static const std::vector<Figure<ToolSteel>> figures = {
        {"hardness_HV", "Hardness", "HV", [](const ToolSteel& s) { return std::round(s.hardness); }},
        {"compressive_yield_MPa", "Yield", "MPa", [](const ToolSteel& s) { return s.compressive_yield; }},
        {"bending_strength_MPa", "Bending", "MPa", [](const ToolSteel& s) { return s.bending_strength; }},
        {"price_per_kg", "Price", "per kg", [](const ToolSteel& s) { return if_given(s.price); }}};
    std::vector<ToolSteel> steels;
    for (const std::string& name : files::known_names(files::tool_steels))
        steels.push_back(files::read_tool_steel(name, {}));
    add_list("Tool steels", "steels", steels, figures, lists);
}

// The sizes that a tool is chosen by: angles, openings and radii. The outer sizes of the block are left out.
std::string main_sizes(const std::vector<files::ToolSize>& sizes) {
    std::string text;
    for (const files::ToolSize& size : sizes) {
        const bool outer = size.key == "height_mm" || size.key == "shank_width_mm" ||
                           size.key == "bottom_radius_mm" || (size.key == "width_mm" && !text.empty());
        if (outer) continue;
        const bool angle = size.unit == files::SizeUnit::rad;
        text += (text.empty() ? "" : ", ") + size.words + " " +
                words(angle ? "%.4g deg" : "%.4g mm", angle ? size.value / degree : size.value);
    }
    return text;
}

void list_racks(Lists& lists) {
    for (const std::string& name : files::known_names(files::tool_racks)) {
        const files::Rack rack = files::read_rack(name, {});
        Json tools = Json::array();
        documents::Table table{"Rack " + name + ": " + rack.title, {{"Tool"}, {"Kind"}, {"Sizes"}}, {}};
        for (const files::Tool& tool : rack.tools) {
            Json sizes;
            for (const files::ToolSize& size : files::sizes_of(tool))
                sizes[size.words] = size.unit == files::SizeUnit::rad
                                        ? std::round(1e6 * size.value / degree) / 1e6
                                        : size.value;
            tools.push_back({{"name", tool.name}, {"kind", files::kind_word(tool)}, {"sizes", sizes}});
            table.rows.push_back({tool.name, files::kind_word(tool), main_sizes(files::sizes_of(tool))});
        }
        lists.json["racks"].push_back({{"name", name}, {"title", rack.title}, {"tools", tools}});
        print(lists, table);
    }
}

Exit list(const ListCommand& given) {
    Lists lists;
    lists.output = given.output;
    const auto asked = [&](const char* what) { return given.what == "all" || given.what == what; };
    if (asked("materials")) list_materials(lists);
    if (asked("racks")) list_racks(lists);
    if (asked("presses")) list_presses(lists);
    if (asked("steels")) list_steels(lists);
    if (given.output.json) print_json(lists.json);
    return Exit::done;
}

}  // namespace

void add_list(Program& app) {
    Command command =
        app.command("list", "Materials, racks of tools, presses and tool steels that a case can name");
    const auto given = std::make_shared<ListCommand>();
    command.option("what", given->what, "materials, racks, presses, steels or all",
                   one_of({"materials", "racks", "presses", "steels", "all"}));
    add_output(command, given->output);
    command.footer(
        "Example: overbend list materials\n"
        "         overbend list racks --json");
    command.runs([given] { return list(*given); });
}

}  // namespace overbend::commands
